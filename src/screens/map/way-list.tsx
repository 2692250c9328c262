/** The seven ways of playing with a chance for each, as links. */
import { type Way, WAYS } from '../../../shared/music/deck';
import { percent } from '../../parts/percent-text';
import { wayText } from '../../parts/words';
import styles from './way-list.module.css';

/** Two short lines for a narrow column. */
const SHORT: Readonly<Record<Way, readonly [string, string]>> = {
  'right.2': ['right', '2 oct.'],
  'left.2': ['left', '2 oct.'],
  'together.2': ['both', '2 oct.'],
  'together.4': ['both', '4 oct.'],
  'together.contrary': ['both', 'contr.'],
  'right.4': ['right', '4 oct.'],
  'left.4': ['left', '4 oct.'],
};

interface WayListProps {
  readonly label: string;
  readonly chances: ReadonlyMap<Way, number>;
  readonly current: Way;
  readonly hrefFor: (way: Way) => string;
}

export function WayList({ label, chances, current, hrefFor }: WayListProps) {
  return (
    <nav aria-label={label}>
      <ul class={styles.list}>
        {WAYS.map((way) => (
          <li key={way} class={styles.way}>
            <a
              class={styles.link}
              href={hrefFor(way)}
              aria-current={way === current ? 'true' : undefined}
            >
              <span class="spoken">{wayText(way)}: </span>
              <span class={styles.name} aria-hidden="true">
                <span>{SHORT[way][0]}</span>
                <span>{SHORT[way][1]}</span>
              </span>
              <span class={styles.share}>
                {percent(chances.get(way)!)}
                <span class="spoken"> per cent</span>
              </span>
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
