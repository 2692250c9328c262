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
  const isTurn = (i: number, sign: number): boolean =>
    [places[i - 1], places[i + 1]].every(
      (near) => near === undefined || (near - places[i]!) * sign > 0,
    );
  const put = (end: readonly Finger[], from: number, step: number, sign: number): void => {
    for (let k = 0; k < end.length; k++) {
      const i = from + step * k;
      if (places[i] !== places[from]! + sign * k) return;
      fingers[i] = end[k]!;
    }
  };
  for (let i = 0; i < places.length; i++) {
    for (const [end, sign] of [
      [plan.low, 1],
      [plan.high, -1],
    ] as const) {
      if (!isTurn(i, sign)) continue;
      put(end, i, 1, sign);
      put(end, i, -1, sign);
    }
  }
  return fingers;
}
