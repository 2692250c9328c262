/**
 * The sign before a metronome mark: a crotchet and an equals sign, drawn, as not every font has the note.
 *
 * <BeatNote /> 60, or <Mark tempo={240} grouping={4} /> for the whole mark with its spoken form
 */
import { type Grouping, markOf, type Tempo } from '../../../shared/music/tempo';
import styles from './beat-note.module.css';

export function BeatNote() {
  return (
    <span class={styles.sign} aria-hidden="true">
      <svg class={styles.note} viewBox="0 0 12 30">
        <ellipse cx="5" cy="25.5" rx="4.6" ry="3.4" transform="rotate(-20 5 25.5)" />
        <rect x="8.2" y="1" width="1.3" height="24" />
      </svg>
      <span>=</span>
    </span>
  );
}

interface MarkProps {
  readonly tempo: Tempo;
  readonly grouping: Grouping;
}

export function Mark({ tempo, grouping }: MarkProps) {
  const mark = markOf(tempo, grouping);
  return (
    <span class={styles.mark}>
      <BeatNote />
      <span class="spoken">tempo </span>
      {mark}
      <span class="spoken">, {grouping} notes a beat</span>
    </span>
  );
}
