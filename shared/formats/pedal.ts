/** The touches of the pedal, of both hands together. */
import type { Score, ScoreNote } from '../music/score';

export interface Touch {
  /** In parts of a beat from the beginning. */
  readonly at: number;
  readonly length: number;
}

function touchesOfHand(notes: readonly ScoreNote[]): readonly Touch[] {
  let end = 0;
  return notes.flatMap(({ length, hasPedal }) => {
    const at = end;
    end += length;
    return hasPedal ? [{ at, length }] : [];
  });
}

/** In order of time, none longer than to the next: there is one pedal for two hands. */
export function touchesOf({ right, left }: Score): readonly Touch[] {
  const all = [...touchesOfHand(right), ...touchesOfHand(left)].toSorted(
    (a, b) => a.at - b.at || a.length - b.length,
  );
  const first = all.filter(({ at }, i) => at !== all[i - 1]?.at);
  return first.map(({ at, length }, i) => ({
    at,
    length: Math.min(length, (first[i + 1]?.at ?? Infinity) - at),
  }));
}
