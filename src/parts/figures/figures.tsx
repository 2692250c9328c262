/**
 * Figured bass as it is printed: the figures of a chord one above the other.
 *
 * <Figures chord="dominant-65" />   6 over 5. Assistive technology reads "6 5".
 */
import { type ChordId, chordOf } from '../../../shared/music/chords';
import styles from './figures.module.css';

export function Figures({ chord }: { readonly chord: ChordId }) {
  const { figures } = chordOf(chord);
  return (
    <span class={styles.figures}>
      {figures.map((figure) => (
        <span key={figure} class={styles.figure}>
          {figure}
        </span>
      ))}
    </span>
  );
}
