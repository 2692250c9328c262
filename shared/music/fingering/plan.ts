/** From a plan to the finger of every note. */
import type { Finger, FingerPlan } from './types';

/** The fingers of a run over some octaves, from its lowest note to its highest; the way down is the same backwards. */
export function fingersOfRun(plan: FingerPlan, octaves: number): readonly Finger[] {
  const { low, pattern, high } = plan;
  const last = pattern.length * octaves;
  return Array.from(
    { length: last + 1 },
    (_, i) => high[last - i] ?? low[i] ?? pattern[i % pattern.length]!,
  );
}

/**
 * The fingers along a course that may turn several times, given as places in chord notes (0 = the bottom note of the
 * plan's chord, one octave up = the number of chord notes). At every turn, and at the start and the stop, the hand
 * takes the fingers of the plan's low or high end; where it goes straight on, the pattern.
 */
export function fingersOfCourse(plan: FingerPlan, places: readonly number[]): readonly Finger[] {
  const size = plan.pattern.length;
  const fingers = places.map((place) => plan.pattern[((place % size) + size) % size]!);
  /** Puts an end's fingers on the notes before and after a turn; `sign` is the direction that leads away from it. */
  function put(end: readonly Finger[], turn: number, sign: number): void {
    for (const step of [-1, 1]) {
      for (const [k, finger] of end.entries()) {
        const i = turn + step * k;
        if (places[i] !== places[turn]! + sign * k) break;
        fingers[i] = finger;
      }
    }
  }
  for (const [i, place] of places.entries()) {
    const near = [places[i - 1], places[i + 1]].filter((other) => other !== undefined);
    if (near.every((other) => other > place)) put(plan.low, i, 1);
    else if (near.every((other) => other < place)) put(plan.high, i, -1);
  }
  return fingers;
}
