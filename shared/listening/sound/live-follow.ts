/**
 * Where in the course the player is while the sound comes in: follow.ts without a future. Dynamic programming over steps and
 * moments, in which who goes elsewhere mostly begins an arpeggio again, as in follower-line.ts. The likeliest way to any
 * step at any moment is the place; how it came there may be seen otherwise a little later.
 */
import type { Expected } from '../expected';

/** An interval from step to step may be these shares of the usual one, the longest these seconds more. */
const SHORTEST = 0.5;
const LONGEST = 1.6;
const HESITATION = 0.25;
/** Cost of an interval that is off by the whole of the usual one, never more than MOST_OFF; and of a stop. */
const OFF = 1;
const MOST_OFF = 0.3;
const STOP = 0.6;
/** Rise from which on a note speaks for a step; a step of which nothing is heard costs as much. */
const FLOOR = 0.25;
/** Worth from which on the first note has been played. */
const BEGUN = 0.2;
/** Cost of beginning an arpeggio again, and of going elsewhere in this one or to the next. */
const RESTART = 2;
const JUMP = 3;
/** Moments that can be looked back on: nine seconds. */
const MEMORY = 512;
/** Intervals of which the usual one is the median, and how many at least. */
const USUAL_OF = 9;
const FEWEST = 3;
/** Steps after which nobody turns the page to what is being played. */
const JUST_BEGUN = 4;

/** A step that was begun, at a moment. */
export interface Begun {
  readonly step: number;
  readonly moment: number;
}

export interface LiveFollow {
  /** The next moment, by how much each step rises at it: 0 to 1. */
  add(riseOf: (step: number) => number): void;
  /** The player was turned to the arpeggio that begins at a step, and goes on from there; false if it has begun already. */
  turnTo(start: number): boolean;
  /** The likeliest way to where the player is now, as far as it can be looked back on. */
  path(): readonly Begun[];
  /** Moments from step to step. */
  interval(): number;
}

/** `interval`: moments from step to step to begin with; `hop`: seconds of a moment. */
export function liveFollowing(
  { steps, parts }: Expected,
  options: { readonly interval: number; readonly hop: number },
): LiveFollow {
  const count = steps.length;
  const hesitation = Math.round(HESITATION / options.hop);
  /** By step and moment: how likely the way is that begins the step there, and where it comes from. */
  const worths = new Float32Array(count * MEMORY).fill(-Infinity);
  const backSteps = new Int16Array(count * MEMORY);
  const backMoments = new Int32Array(count * MEMORY);
  /** The best moment of each step. */
  const bests = new Float32Array(count).fill(-Infinity);
  const bestMoments = new Int32Array(count);
  let [interval, costs] = [0, new Float32Array()];
  let now = -1;
  let start = 0;
  let place: Begun | null = null;

  const setInterval = (moments: number) => {
    if (moments === interval) return;
    interval = moments;
    const longest = Math.min(MEMORY - 1, Math.round(LONGEST * interval) + hesitation);
    costs = Float32Array.from({ length: longest + 1 }, (_, k) =>
      Math.min(MOST_OFF, OFF * (k / interval - 1) ** 2),
    );
  };
  setInterval(options.interval);

  /** Index of the part that a step belongs to; a shared one belongs to the one that it begins. */
  const partOf = (step: number): number =>
    Math.max(
      0,
      parts.findLastIndex(({ from }) => from <= step),
    );
  const path = (): readonly Begun[] => {
    const way: Begun[] = [];
    for (let one = place; one !== null && one.moment > now - MEMORY;) {
      way.push(one);
      const cell = one.step * MEMORY + (one.moment % MEMORY);
      one = backSteps[cell]! < 0 ? null : { step: backSteps[cell]!, moment: backMoments[cell]! };
    }
    return way.toReversed();
  };
  const learn = () => {
    const way = path().slice(-USUAL_OF - 2, -1);
    const took = way
      .slice(1)
      .flatMap(({ step, moment }, i) =>
        step === way[i]!.step + 1 ? [moment - way[i]!.moment] : [],
      );
    if (took.length >= FEWEST) setInterval(took.toSorted((a, b) => a - b)[took.length >> 1]!);
  };
  const decide = () => {
    let [step, worth] = [-1, place === null ? BEGUN : -Infinity];
    for (let one = 0; one < count; one++)
      if (bests[one]! > worth) [step, worth] = [one, bests[one]!];
    if (step < 0) return;
    const isNew = place?.step !== step;
    place = { step, moment: bestMoments[step]! };
    if (isNew) learn();
  };

  return {
    interval: () => interval,
    path,
    turnTo: (to) => {
      if (place !== null && place.step >= to && place.step < to + JUST_BEGUN) return false;
      worths.fill(-Infinity);
      bests.fill(-Infinity);
      [start, place] = [to, null];
      return true;
    },
    add: (riseOf) => {
      now += 1;
      const column = now % MEMORY;
      for (let cell = column; cell < worths.length; cell += MEMORY) worths[cell] = -Infinity;
      const shortest = Math.max(1, Math.round(SHORTEST * interval));
      const longest = costs.length - 1;
      const here = partOf(place?.step ?? start);
      const [before, part, after] = [parts[Math.max(0, here - 1)]!, parts[here]!, parts[here + 1]];
      const isFree = place !== null && now - place.moment >= shortest;
      const priceOf = (step: number): number => {
        if (step > part.to && step !== after?.from) return Infinity;
        const isStart =
          step <= part.from && (step === 0 || step === part.from || step === before.from);
        if (isStart) return RESTART;
        return step >= part.from && step <= part.to ? JUMP : Infinity;
      };
      const begin = (step: number) => {
        let [most, backStep, backMoment] = [-Infinity, -1, -1];
        // Again and again: what was taken for the first note may have been something else.
        if (step === start) most = 0;
        if (step > 0) {
          const row = (step - 1) * MEMORY;
          for (let k = shortest; k <= longest && k <= now; k++) {
            const worth = worths[row + ((now - k) % MEMORY)]! - costs[k]!;
            if (worth > most) [most, backStep, backMoment] = [worth, step - 1, now - k];
          }
          const stopped = bests[step - 1]! - STOP;
          if (stopped > most && now - bestMoments[step - 1]! > longest) {
            [most, backStep, backMoment] = [stopped, step - 1, bestMoments[step - 1]!];
          }
        }
        if (isFree) {
          const elsewhere = bests[place!.step]! - priceOf(step);
          if (elsewhere > most)
            [most, backStep, backMoment] = [elsewhere, place!.step, place!.moment];
        }
        if (most === -Infinity) return false;
        const worth = most + riseOf(step) - FLOOR;
        const cell = step * MEMORY + column;
        worths[cell] = worth;
        backSteps[cell] = backStep;
        backMoments[cell] = backMoment;
        return worth > bests[step]!;
      };
      const better: number[] = [];
      if (before.from > 0 && begin(0)) better.push(0);
      for (let step = before.from; step <= (after ?? part).to; step++)
        if (begin(step)) better.push(step);
      for (const step of better) {
        bests[step] = worths[step * MEMORY + column]!;
        bestMoments[step] = now;
      }
      if (better.length > 0) decide();
    },
  };
}
