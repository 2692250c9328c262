/**
 * What a take says of a run's fluency by its measures alone: the learner asks it in replay, where there is no score. With
 * the score at hand, shared/listening/suggest.ts hears a little more.
 */
import type { Grouping } from '../music/tempo';
import type { Fluency } from './events';
import type { HandTake, RunTake } from './run-take';
import {
  BROKEN,
  FAIR,
  GOOD,
  intervalOf,
  leastStop,
  leastWaitOf,
  TOGETHER,
  unitsOf,
} from './take-limits';

/** Shares of right notes (P). */
const HARDLY = 0.75;
const MOSTLY = 0.9;

/** What a take says, and how far its measures can be trusted, 0 to 1. */
export interface Heard {
  readonly fluency: Fluency;
  readonly certainty: number;
}

export const heardOf = (take: RunTake, grouping: Grouping): Heard => ({
  fluency: heardFluency(take, grouping),
  certainty: take.certainty,
});

/**
 * The rule (P), first match:
 *
 * 0 broke down: broke off, or fewer than three in four notes right;
 * 1 stopped: the beat was lost somewhere, or fewer than nine in ten notes right;
 * 2 uneven: two faults or more, a hesitation, unevenness of more than 4 just noticeable units, a late thumb, or hands
 * clearly apart;
 * 3 even: one fault, gaps at the joins, a loud thumb, a change of tempo, or unevenness of more than 2.5 units;
 * 4 effortless: none of these.
 */
export function heardFluency(take: RunTake, grouping: Grouping): Fluency {
  const share = take.right / Math.max(1, take.notes);
  if (take.breaks.length > 0 || share < HARDLY) return 0;
  const interval = intervalOf(take);
  const hands = [take.hands.right, take.hands.left].filter((hand) => hand !== null);
  const wait = interval === null ? 0 : Math.max(0, ...hands.map((hand) => longest(hand, interval)));
  if ((interval !== null && wait >= leastStop(interval, grouping)) || share < MOSTLY) return 1;
  const units = Math.max(...hands.map((hand) => unitsOfHand(hand, interval)));
  const apart = Math.max(Math.abs(take.lead ?? 0), take.looseness ?? 0);
  const isThumbLate = hands.some(({ thumbLate }) => thumbLate);
  if (take.faults.length > 1 || wait > 0 || units > FAIR || isThumbLate || apart > TOGETHER)
    return 2;
  const isMarked = hands.some(
    ({ overlap, thumbAccent }) => thumbAccent || (overlap !== null && overlap < BROKEN),
  );
  return take.faults.length > 0 || isMarked || take.drift || units > GOOD ? 3 : 4;
}

/** The longest wait of a hand in ms that is a hesitation or more; 0 without one. */
function longest(hand: HandTake, interval: number): number {
  const least = leastWaitOf(hand, interval);
  return hand.waits.reduce<number>(
    (most, wait) => (wait !== null && wait >= least ? Math.max(most, wait) : most),
    0,
  );
}

/** FAIR where unevenness is not known, as nothing is called effortless unheard. */
const unitsOfHand = ({ unevenness }: HandTake, interval: number | null): number =>
  unevenness === null || interval === null ? FAIR : unitsOf(unevenness, interval);
