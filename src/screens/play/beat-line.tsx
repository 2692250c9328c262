/**
 * The beat to be seen: a small mark that moves along the arpeggio from beat to beat, so nothing flashes at any tempo.
 * The strokes are the ends and the notes at which the right hand (or the left alone) turns.
 */
import { useMemo } from 'preact/hooks';
import type { Score } from '../../../shared/music/score';
import type { Part } from './course';
import type { Run } from './run';
import styles from './beat-line.module.css';

export function BeatLine({ run, part }: { readonly run: Run; readonly part: Part }) {
  const turns = useMemo(() => turningPoints(part.score), [part]);
  const placeOf = (step: number): string => `${(100 * step) / part.intervals}%`;
  const along = run.beatPosition.value - part.start;
  const step = Math.min(part.intervals, Math.max(0, along));
  return (
    <div class={styles.line} aria-hidden="true">
      {turns.map((turn) => (
        <span key={turn} class={styles.turn} style={{ left: placeOf(turn) }} />
      ))}
      <span class={styles.mark} style={{ left: placeOf(step) }} />
    </div>
  );
}

/** Steps at which the direction changes, with the first and the last. */
function turningPoints({ right, left }: Score): readonly number[] {
  const midis = (right.length > 0 ? right : left).map(({ keys }) => keys[0]!.midi);
  return midis.flatMap((midi, i) => {
    const before = midis[i - 1];
    const after = midis[i + 1];
    const isEnd = before === undefined || after === undefined;
    return isEnd || (midi - before) * (after - midi) < 0 ? [i] : [];
  });
}
