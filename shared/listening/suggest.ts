/** A fluency that the measures of a take suggest. The person decides. */
import type { Fluency } from '../log/events';
import type { RunTake } from '../log/run-take';
import type { Score } from '../music/score';
import { FAIR, type Finding, findingsOf, intervalOf, unitsOf } from './findings';

/** Just noticeable units up to which evenness counts as good (P): professionals have 1.4 at four notes of 125 ms. */
const GOOD = 2.5;
/** Shares of right notes (P). */
const HARDLY = 0.75;
const MOSTLY = 0.9;

/**
 * The rule (P), first match:
 *
 * 0 broke down: broke off, or fewer than three in four notes right;
 * 1 stopped: the beat was lost somewhere, or fewer than nine in ten notes right;
 * 2 uneven: two faults or more, a hesitation, unevenness of more than 4 just noticeable units, a late thumb, or hands
 * clearly apart;
 * 3 even: one fault, gaps at the joins, a change of tempo, or unevenness of more than 2.5 units;
 * 4 effortless: none of these.
 */
export function suggestedFluency(take: RunTake, score: Score): Fluency {
  const found = findingsOf(take, score);
  const has = (...kinds: readonly Finding['kind'][]) =>
    found.some(({ kind }) => kinds.includes(kind));
  const share = take.right / Math.max(1, take.notes);
  if (has('break') || share < HARDLY) return 0;
  if (has('stop') || share < MOSTLY) return 1;
  if (take.faults.length > 1 || has('hesitation', 'uneven', 'thumb late', 'lead', 'loose'))
    return 2;
  return take.faults.length > 0 || found.length > 0 || unitsOfTake(take) > GOOD ? 3 : 4;
}

/** Of the less even hand; FAIR where it is not known, as nothing is called effortless unheard. */
function unitsOfTake(take: RunTake): number {
  const interval = intervalOf(take);
  const hands = [take.hands.right, take.hands.left].filter((hand) => hand !== null);
  if (interval === null) return FAIR;
  return Math.max(
    ...hands.map(({ unevenness }) => (unevenness === null ? FAIR : unitsOf(unevenness, interval))),
  );
}
