/** What one more run of an item is worth: how much of its shortfall on the date it takes away. */
import type { Learner } from '../learning/learner';
import { serviceOf } from '../learning/practice';
import { meanAfterRun, meanWithoutRun } from '../learning/prediction';
import type { Item } from '../music/deck';
import type { Tempo } from '../music/tempo';

export interface Horizon {
  /** Day numbers. */
  readonly today: number;
  readonly date: number;
}

/** In octaves of tempo. */
const MARGIN = 0.1;
/** From here on an item lacks much, in octaves. */
const MUCH = 0.25;

/**
 * Shortfall of a level (log2 of the mark at four notes a beat) against a target. It falls smoothly to nothing a little
 * above it, so that items near the target are neither dropped at once nor polished for ever. It is squared, as a
 * programme is ready when its last items are, so those that lack more count for more than their lack; but not beyond
 * what is much, or the few that lack most would take the time of all others.
 */
export function shortfall(level: number, target: Tempo): number {
  const lack = MARGIN * Math.log1p(Math.exp(-(level - Math.log2(target / 4) - MARGIN) / MARGIN));
  return lack < MUCH ? lack ** 2 : MUCH * (2 * lack - MUCH);
}

/** The fall of the shortfall on the date by a run today. */
export const valueOfRun = (
  learner: Learner,
  item: Item,
  target: Tempo,
  { today, date }: Horizon,
): number =>
  shortfall(meanWithoutRun(learner, item, today, date), target) -
  shortfall(meanAfterRun(learner, item, today, date), target);

/** The fall of the shortfall of an item that a run of another one serves. */
export function valueOfService(
  learner: Learner,
  [item, served]: readonly [Item, Item],
  target: Tempo,
  { today, date }: Horizon,
): number {
  const level = meanWithoutRun(learner, served, today, date);
  const gain = serviceOf(learner, item, served, today);
  return shortfall(level, target) - shortfall(level + gain, target);
}
