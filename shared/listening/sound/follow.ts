/**
 * Where each expected step most likely begins: dynamic programming that follows the rises of the known notes in order, at
 * a tempo that may sway, with hesitations, and with stops at a price. One pass: of a restart the longer part is followed.
 */
import { costsOf, shortestOf, STOP } from './intervals';
import type { Rises } from './rises';

export interface Place {
  /** Seconds. */
  readonly at: number;
  /** 0 to 1: how much of the step's notes begins there. */
  readonly rise: number;
}

/** Shares of the stated interval that are tried, and on how many steps. */
const TEMPOS = [1, 0.72, 1.4];
const TRIED = 40;

/** For each step its place, in order; fewer than `steps` if the playing broke off. `interval` in seconds. */
export function follow(rises: Rises, steps: number, interval: number): readonly Place[] {
  const tried = Math.min(steps, TRIED);
  let best: Path = { places: [], worth: -Infinity };
  for (const share of TEMPOS) {
    const path = pathOf(rises, tried, interval * share);
    if (path.worth > best.worth) best = path;
  }
  return pathOf(rises, steps, usualOf(best.places) ?? interval).places;
}

interface Path {
  readonly places: readonly Place[];
  readonly worth: number;
}

/** Median time from place to place; null with fewer than two. */
export function usualOf(places: readonly { readonly at: number }[]): number | null {
  const lengths = places.slice(1).map(({ at }, i) => at - places[i]!.at);
  return lengths.toSorted((a, b) => a - b)[lengths.length >> 1] ?? null;
}

function pathOf(rises: Rises, steps: number, interval: number): Path {
  const { length, hop, start } = rises;
  const shortest = shortestOf(interval / hop);
  const costs = costsOf(interval / hop, hop);
  const longest = costs.length - 1;
  // How far back the step before lies, for every step and moment.
  const back = new Uint16Array(steps * length);
  let worths = rises.ofStep(0).slice();
  let [endStep, endAt] = [0, highestOf(worths)];
  let worth = worths[endAt] ?? 0;
  for (let step = 1; step < steps; step++) {
    const rise = rises.ofStep(step);
    const next = new Float32Array(length).fill(-Infinity);
    let stoppedAt = 0;
    for (let i = shortest; i < length; i++) {
      let [most, far] = [-Infinity, 0];
      for (let k = shortest; k <= longest && k <= i; k++) {
        const value = worths[i - k]! - costs[k]!;
        if (value > most) [most, far] = [value, k];
      }
      const stop = i - longest - 1;
      if (stop >= 0) {
        if (worths[stop]! > worths[stoppedAt]!) stoppedAt = stop;
        if (worths[stoppedAt]! - STOP > most)
          [most, far] = [worths[stoppedAt]! - STOP, i - stoppedAt];
      }
      next[i] = most + rise[i]!;
      back[step * length + i] = far;
    }
    worths = next;
    const highest = highestOf(worths);
    if (worths[highest]! > worth) [endStep, endAt, worth] = [step, highest, worths[highest]!];
  }
  const places: Place[] = [];
  for (let [step, i] = [endStep, endAt]; step >= 0; i -= back[step * length + i]!, step--) {
    places.unshift({ at: start + i * hop, rise: rises.ofStep(step)[i] ?? 0 });
  }
  return { places, worth };
}

const highestOf = (values: Float32Array): number =>
  values.reduce((best, value, i) => (value > values[best]! ? i : best), 0);
