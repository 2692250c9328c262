/** What is to be expected of a tempo, in a sentence whose numbers come from the model. */
import type { Day } from '../log/events';
import type { Item } from '../music/deck';
import { type Grouping, markOf, type Tempo } from '../music/tempo';
import type { Learner } from '../learning/learner';
import { chanceEven, type Reach, reachOf } from '../learning/prediction';

const TENTHS = [
  'hardly ever',
  'one time in ten',
  'two times in ten',
  'three times in ten',
  'four times in ten',
  'half of the time',
  'six times in ten',
  'seven times in ten',
  'eight times in ten',
  'nine times in ten',
  'nearly always',
];

/** "eight times in ten", of a chance from 0 to 1. */
export const oftenText = (chance: number): string => TENTHS[Math.round(10 * chance)]!;

/** The geometric mean of one side of some reaches. */
const middle = (reaches: readonly Reach[], side: keyof Reach): Tempo =>
  2 ** (reaches.reduce((sum, reach) => sum + Math.log2(reach[side]), 0) / reaches.length);

/** "At 92 even eight times in ten; half of the time at 101 (94 to 108)." Of several items the middle. */
export function tempoReason(
  learner: Learner,
  items: readonly Item[],
  {
    tempo,
    day,
    grouping,
  }: { readonly tempo: Tempo; readonly day: Day; readonly grouping: Grouping },
): string {
  const chances = items.map((item) => chanceEven(learner, item, tempo, day));
  const chance = chances.reduce((sum, one) => sum + one, 0) / chances.length;
  const reaches = items.map((item) => reachOf(learner, item, day));
  const [at, low, high] = (['tempo', 'low', 'high'] as const).map((side) =>
    markOf(middle(reaches, side), grouping),
  );
  return `At ${markOf(tempo, grouping)} even ${oftenText(chance)}; half of the time at ${at} (${low} to ${high}).`;
}
