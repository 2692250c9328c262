/** The seven ways of playing as links, with a chance for each in which there is anything to play. */
import { type Way, WAYS } from '../../../shared/music/deck';
import { percent } from '../percent-text';
import { wayText } from '../words';
import { SHORT_WAY } from '../short-way';
import styles from './way-list.module.css';

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
                <span>{SHORT_WAY[way][0]}</span>
                <span>{SHORT_WAY[way][1]}</span>
              </span>
              <Share chance={chances.get(way)} />
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function Share({ chance }: { readonly chance: number | undefined }) {
  if (chance === undefined) {
    return (
      <span class={styles.none}>
        <span aria-hidden="true">·</span>
        <span class="spoken">not asked for</span>
      </span>
    );
  }
  return (
    <span class={styles.share}>
      {percent(chance)}
      <span class="spoken"> per cent</span>
    </span>
  );
}
