import { PROBES } from '../../../shared/planning/placement';
import { Button } from '../../parts/button/button';
import { WhoseName } from '../../parts/page/whose';
import { noteText, wayText } from '../../parts/words';
import type { OpenEntry } from '../../day/session';
import styles from './stand-bar.module.css';

interface StandBarProps {
  readonly entry: OpenEntry;
  readonly at: number;
  readonly isPlaying: boolean;
  readonly onStop: () => void;
}

/** What is being played, how far along it is, and the way out. */
export function StandBar({ entry, at, isPlaying, onStop }: StandBarProps) {
  // Probes are counted as the chords of a round are.
  const { probe } = entry;
  const count = probe === undefined ? entry.items.length : PROBES;
  const place = probe === undefined ? at : probe - 1;
  const what = probe === undefined ? 'Chord' : 'Run';
  return (
    <header class={styles.bar}>
      <div class={styles.words}>
        <WhoseName />
        <p class={styles.way}>
          <span class="music">{noteText(entry.note)}</span>, {wayText(entry.way)}
        </p>
        {count > 1 && (
          <div class={styles.ticks} role="img" aria-label={`${what} ${place + 1} of ${count}`}>
            {Array.from({ length: count }, (_, i) => (
              <span
                key={i}
                class={styles.tick}
                data-place={i < place ? 'past' : i === place ? 'now' : 'ahead'}
              />
            ))}
          </div>
        )}
      </div>
      <Button size="stand" onClick={onStop}>
        {isPlaying ? 'Stop' : probe === undefined ? 'List' : 'Enough'}
      </Button>
    </header>
  );
}
