/** How the notes that were heard at one moment stand for those that were expected there, and what that costs. */
import type { ExpectedNote, ExpectedStep } from './expected';
import type { HeardNote } from './take';

/** Costs in faults (P): a wrong note is one fault and not two. */
export const MISSED = 1;
export const EXTRA = 1;
const WRONG = 1.1;
/** More for each semitone that a wrong note lies off, so that the nearer hand gets it. */
const FURTHER = 0.02;
const MOST_FURTHER = 0.3;

export const pairCost = (note: ExpectedNote, heard: Pick<HeardNote, 'midi'>): number => {
  const off = Math.abs(note.key.midi - heard.midi);
  return off === 0 ? 0 : WRONG + Math.min(MOST_FURTHER, FURTHER * off);
};

/** For each expected note of a step, which of the heard ones stands for it; -1 is none. */
type Assignment = readonly number[];

const ASSIGNMENTS: Readonly<Record<number, readonly (readonly Assignment[])[]>> = {
  // By notes of the step, then by heard notes taken.
  1: [[[-1]], [[0]]],
  2: [
    [[-1, -1]],
    [
      [0, -1],
      [-1, 0],
    ],
    [
      [0, 1],
      [1, 0],
    ],
    // The one in the middle is extra; one before or after has a way of its own.
    [
      [0, 2],
      [2, 0],
    ],
  ],
};

interface Fit {
  readonly assignment: Assignment;
  readonly cost: number;
}

/** The cheapest assignment of so many heard notes, one to three, to the notes of a step. */
export function bestFit(step: ExpectedStep, heard: readonly HeardNote[]): Fit {
  const fits = ASSIGNMENTS[step.length]![heard.length]!.map((assignment): Fit => {
    const costs = assignment.map((at, i) => (at < 0 ? MISSED : pairCost(step[i]!, heard[at]!)));
    const used = assignment.filter((at) => at >= 0).length;
    const cost = costs.reduce((sum, one) => sum + one, 0) + (heard.length - used) * EXTRA;
    return { assignment, cost };
  });
  return fits.reduce((best, fit) => (fit.cost < best.cost ? fit : best));
}

/** The cost of bestFit alone, for the many cells that lead nowhere. */
export function costOfFit(
  step: ExpectedStep,
  heard: readonly HeardNote[],
  from: number,
  count: number,
): number {
  const [one, other] = [step[0]!, step[1]];
  const first = heard[from]!;
  if (other === undefined) return pairCost(one, first);
  if (count === 1) return MISSED + Math.min(pairCost(one, first), pairCost(other, first));
  const last = heard[from + count - 1]!;
  const straight = pairCost(one, first) + pairCost(other, last);
  const crossed = pairCost(one, last) + pairCost(other, first);
  return Math.min(straight, crossed) + (count - 2) * EXTRA;
}
