/** The touches of the pedal, of both hands together. */
import { HANDS, placedNotes } from '../music/engraving/placed';
import type { Score } from '../music/score';

export interface Touch {
  /** In parts of a beat from the beginning. */
  readonly at: number;
  readonly length: number;
}

/** In order of time, none longer than to the next: there is one pedal for two hands. */
export function touchesOf(score: Score): readonly Touch[] {
  const all = HANDS.flatMap((hand) => placedNotes(score, hand))
    .filter(({ hasPedal }) => hasPedal)
    .map(({ place, length }): Touch => ({ at: place, length }))
    .toSorted((a, b) => a.at - b.at || a.length - b.length);
  const first = all.filter(({ at }, i) => at !== all[i - 1]?.at);
  return first.map(({ at, length }, i) => ({
    at,
    length: Math.min(length, (first[i + 1]?.at ?? Infinity) - at),
  }));
}
