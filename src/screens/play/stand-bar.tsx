import { Button } from '../../parts/button/button';
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
  const count = entry.items.length;
  return (
    <header class={styles.bar}>
      <div class={styles.words}>
        <p class={styles.way}>
          <span class="music">{noteText(entry.note)}</span>, {wayText(entry.way)}
        </p>
        {count > 1 && (
          <div class={styles.ticks} role="img" aria-label={`Chord ${at + 1} of ${count}`}>
            {entry.items.map((item, i) => (
              <span
                key={item}
                class={styles.tick}
                data-place={i < at ? 'past' : i === at ? 'now' : 'ahead'}
              />
            ))}
          </div>
        )}
      </div>
      <Button size="stand" onClick={onStop}>
        {isPlaying ? 'Stop' : 'List'}
      </Button>
    </header>
  );
}
