/** What one more run of an item is worth: how much of its shortfall on the date it takes away. */
import type { Learner } from '../learning/learner';
import { meanAfterRun, meanWithoutRun } from '../learning/prediction';
import type { Item } from '../music/deck';
import type { Tempo } from '../music/tempo';

export interface Horizon {
  /** Day numbers. */
  readonly today: number;
  readonly date: number;
}

const MARGIN = 0.25;
/** Above 1, as a programme is ready when its last items are: those that lack most count for more than their lack. */
const LAGGARDS = 2;

/**
 * Shortfall of a level (log2 of the mark at four notes a beat) against a target: falls smoothly to nothing beyond a
 * quarter of an octave above it, so that items near the target are neither dropped at once nor polished for ever.
 */
export const shortfall = (level: number, target: Tempo): number =>
  (MARGIN * Math.log1p(Math.exp(-(level - Math.log2(target / 4) - MARGIN) / MARGIN))) ** LAGGARDS;

/** The fall of the shortfall on the date by a run today. */
export const valueOfRun = (
  learner: Learner,
  item: Item,
  target: Tempo,
  { today, date }: Horizon,
): number =>
  shortfall(meanWithoutRun(learner, item, today, date), target) -
  shortfall(meanAfterRun(learner, item, today, date), target);
