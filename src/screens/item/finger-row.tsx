/** One hand's fingers over two octaves, from the lowest note up: a bracket over each position, the finger under each note. */
import type { Fingering } from '../../../shared/music/fingering/result';
import styles from './finger-row.module.css';

interface FingerRowProps {
  readonly fingering: Fingering;
  /** Names as shown and as read aloud, bottom note of the chord first. */
  readonly names: readonly string[];
  readonly label: string;
}

export function FingerRow({ fingering, names, label }: FingerRowProps) {
  return (
    <div class={styles.row} role="img" aria-label={`${label}: ${fingering.fingers.join(' ')}`}>
      {fingering.positions.map((position) => (
        <span key={position.notes[0]!.index} class={styles.position} aria-hidden="true">
          {position.notes.map(({ index, finger }) => (
            <span key={index} class={styles.note}>
              <span class={styles.name}>{names[index % names.length]}</span>
              <span class={styles.finger}>{finger}</span>
            </span>
          ))}
        </span>
      ))}
    </div>
  );
}
