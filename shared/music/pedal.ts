/** The touches of the pedal that carry the sound over the position changes, of both hands together. */
import { HANDS, inPlace } from './engraving/placed';
import type { Score, ScoreNote } from './score';

export interface Touch {
  /** Where the pedal goes down, in parts of a beat from the beginning. */
  readonly at: number;
  /** Until it comes up. */
  readonly length: number;
}

/**
 * The pedal goes down when the last note before the change has sounded for half its length, so that it catches that note
 * alone, and comes up a quarter into the note of arrival, which is then held by its finger (common practice, no source).
 */
const AFTER_ATTACK = 1 / 2;
const INTO_ARRIVAL = 1 / 4;

function touchesOfHand(notes: readonly ScoreNote[]): readonly Touch[] {
  const placed = inPlace(notes);
  return placed.flatMap(({ hasPedal, place, length }, i) => {
    if (!hasPedal) return [];
    const at = place + length * AFTER_ATTACK;
    const up = place + length + (placed[i + 1]?.length ?? 0) * INTO_ARRIVAL;
    return [{ at, length: up - at }];
  });
}

/** In order of time, none longer than to the next: there is one pedal for two hands. */
export function touchesOf(score: Score): readonly Touch[] {
  const all = HANDS.flatMap((hand) => touchesOfHand(score[hand])).toSorted(
    (a, b) => a.at - b.at || a.length - b.length,
  );
  const first = all.filter(({ at }, i) => at !== all[i - 1]?.at);
  return first.map(({ at, length }, i) => ({
    at,
    length: Math.min(length, (first[i + 1]?.at ?? Infinity) - at),
  }));
}
