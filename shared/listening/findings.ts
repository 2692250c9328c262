/** What the measures of a take say to a teacher: only what can be heard, and what does not come by chance. */
import type { HandTake, RunTake, TakeFault } from '../log/run-take';
import {
  BROKEN,
  FAIR,
  intervalOf,
  leastStop,
  leastWaitOf,
  TOGETHER,
  unitsOf,
} from '../log/take-limits';
import type { Finger, Hand } from '../music/fingering/types';
import type { Score, ScoreNote } from '../music/score';
import { mean } from './statistics';

export type HandOrBoth = Hand | 'both';

export type Finding =
  /** At a place the player broke off; `isForGood` without playing on from anywhere. */
  | { readonly kind: 'break'; readonly step: number; readonly isForGood: boolean }
  /** The beat is lost before a note (`wait` in ms) … */
  | {
      readonly kind: 'stop';
      readonly hand: HandOrBoth;
      readonly step: number;
      readonly wait: number;
    }
  /** … or only held up. */
  | {
      readonly kind: 'hesitation';
      readonly hand: HandOrBoth;
      readonly step: number;
      readonly wait: number;
    }
  | TakeFault
  /** All position changes of one sort take longer: see joinsOf. */
  | ({ readonly kind: 'join' } & Join)
  /** Milliseconds by which the left hand comes after the right. */
  | { readonly kind: 'lead'; readonly late: number }
  | { readonly kind: 'loose'; readonly looseness: number }
  | { readonly kind: 'thumb late'; readonly hand: Hand; readonly late: number }
  | { readonly kind: 'thumb loud'; readonly hand: Hand; readonly accent: number }
  /** Gaps between the notes: `gap` in ms. */
  | { readonly kind: 'gap'; readonly hand: Hand; readonly gap: number }
  | { readonly kind: 'drift'; readonly drift: number }
  | { readonly kind: 'uneven'; readonly hand: HandOrBoth; readonly units: number };

/** All changes of position of one hand to the same note of the chord, in one direction. */
export interface Join {
  readonly hand: Hand;
  readonly way: 'up' | 'down';
  /** Place in the chord of the note that is reached. */
  readonly tone: number;
  readonly finger: Finger | null;
  readonly change: 'thumb under' | 'hand over';
  /** Mean of the waits in ms, and of how many. */
  readonly wait: number;
  readonly count: number;
}

const HANDS = ['right', 'left'] as const;

/** Whether both hands play and have only the time of their moment, so that what is late or uneven is of both. */
export const isAsOne = ({ source, hands }: RunTake): boolean =>
  source === 'microphone' && hands.right !== null && hands.left !== null;

/** Milliseconds and standard errors from which a join is told (P). */
const LEAST_JOIN = 15;
const SURELY = 5;
/** The waits before the position changes that the fingering of the score shows, in the order of playing. */
export function joinsOf(take: RunTake, score: Score): readonly Join[] {
  return HANDS.flatMap((hand) => {
    const groups = new Map<string, Join[]>();
    score[hand].forEach((note, step) => {
      const wait = take.hands[hand]?.waits[step] ?? null;
      if (note.change === null || wait === null) return;
      const way = isUp(score[hand], step) ? 'up' : 'down';
      const { tone } = note.keys[0]!;
      const finger = note.fingers[0] ?? null;
      const one: Join = { hand, way, tone, finger, change: note.change, wait, count: 1 };
      groups.set(`${way} ${tone}`, [...(groups.get(`${way} ${tone}`) ?? []), one]);
    });
    return [...groups.values()].map((all): Join => ({
      ...all[0]!,
      wait: Math.round(mean(all.map(({ wait }) => wait))!),
      count: all.length,
    }));
  });
}

const isUp = (notes: readonly ScoreNote[], step: number): boolean =>
  notes[step]!.keys[0]!.midi > notes[step - 1]!.keys[0]!.midi;

/** All findings of a take of the item that the score shows, in the order of their kinds. */
export function findingsOf(take: RunTake, score: Score): readonly Finding[] {
  const interval = intervalOf(take);
  return [
    ...breaksOf(take),
    ...(interval === null ? [] : waitsOf(take, score, interval)),
    ...take.faults,
    ...(interval === null ? [] : habitsOf(take, score, interval)),
    ...handFindings(take, interval),
    ...(take.drift === null || take.drift === 0
      ? []
      : [{ kind: 'drift', drift: take.drift } as const]),
  ];
}

function breaksOf({ breaks, hands }: RunTake): readonly Finding[] {
  const last = Math.max(hands.right?.waits.length ?? 0, hands.left?.waits.length ?? 0) - 1;
  const reached = Math.max(
    ...HANDS.map((hand) => hands[hand]?.waits.findLastIndex((wait) => wait !== null) ?? -1),
  );
  return breaks.map((step, i) => {
    const isForGood = i === breaks.length - 1 && reached <= step && step < last;
    return { kind: 'break', step, isForGood };
  });
}

/** Hesitations and stops, both hands in one where both wait. */
function waitsOf(take: RunTake, score: Score, interval: number): readonly Finding[] {
  const stop = leastStop(interval, score.grouping);
  /** Where a hand misses the note before which both wait, the time to its next one holds the same wait. */
  const isToldBefore = (hand: Hand, step: number): boolean => {
    const [own, other] =
      hand === 'right' ? [take.hands.right, take.hands.left] : [take.hands.left, take.hands.right];
    if (own === null || other === null) return false;
    for (let before = step - 1; before > 0 && own.waits[before] === null; before--) {
      if ((other.waits[before] ?? 0) >= leastWaitOf(other, interval)) return true;
    }
    return false;
  };
  const steps = Math.max(score.right.length, score.left.length);
  return Array.from({ length: steps }, (_, step) => step).flatMap((step): readonly Finding[] => {
    const waiting = HANDS.flatMap((hand) => {
      const measured = take.hands[hand];
      const wait = measured?.waits[step] ?? null;
      // What the thumb does throughout is told as that.
      const usual = score[hand][step]?.fingers[0] === 1 ? (measured?.thumbLate ?? 0) : 0;
      const isLong = measured && wait !== null && wait - usual >= leastWaitOf(measured, interval);
      return isLong && !isToldBefore(hand, step) ? [{ hand, wait }] : [];
    });
    if (waiting.length === 0) return [];
    const hand = waiting.length === 2 || isAsOne(take) ? 'both' : waiting[0]!.hand;
    const wait = Math.max(...waiting.map((one) => one.wait));
    return [{ kind: wait >= stop ? 'stop' : 'hesitation', hand, step, wait }];
  });
}

/** What recurs: joins that take longer time and again. A single hesitation is told as such. */
function habitsOf(take: RunTake, score: Score, interval: number): readonly Finding[] {
  return joinsOf(take, score).flatMap((join) => {
    const hand = take.hands[join.hand]!;
    const error = (hand.unevenness ?? Infinity) / Math.sqrt(join.count);
    const least = Math.max(LEAST_JOIN, 0.025 * interval, SURELY * error);
    const isHabit = join.count > 1 && join.wait >= least;
    return isHabit && waitsAtMost(take, score, join, leastWaitOf(hand, interval))
      ? [{ kind: 'join', ...join } as const]
      : [];
  });
}

/** Whether no wait of a join is a hesitation of its own. */
const waitsAtMost = (take: RunTake, score: Score, join: Join, most: number): boolean =>
  score[join.hand].every(({ change, keys }, step) => {
    const isOfJoin =
      change !== null &&
      keys[0]!.tone === join.tone &&
      isUp(score[join.hand], step) === (join.way === 'up');
    return !isOfJoin || (take.hands[join.hand]!.waits[step] ?? 0) < most;
  });

function handFindings(take: RunTake, interval: number | null): readonly Finding[] {
  const together: Finding[] = [];
  if (take.lead !== null && Math.abs(take.lead) > TOGETHER) {
    together.push({ kind: 'lead', late: take.lead });
  }
  if (take.looseness !== null && take.looseness > TOGETHER) {
    together.push({ kind: 'loose', looseness: take.looseness });
  }
  if (isAsOne(take)) return unevenOf('both', take.hands.right!, interval);
  return together.concat(
    HANDS.flatMap((hand): readonly Finding[] => {
      const measured = take.hands[hand];
      return measured ? ofHand(hand, measured, interval) : [];
    }),
  );
}

function ofHand(hand: Hand, measured: HandTake, interval: number | null): readonly Finding[] {
  const { thumbLate, thumbAccent, overlap } = measured;
  const found: Finding[] = [];
  if (thumbLate) found.push({ kind: 'thumb late', hand, late: thumbLate });
  if (thumbAccent) found.push({ kind: 'thumb loud', hand, accent: thumbAccent });
  if (overlap !== null && overlap < BROKEN) found.push({ kind: 'gap', hand, gap: -overlap });
  // A thumb that is late makes a hand uneven, and says more.
  return thumbLate ? found : found.concat(unevenOf(hand, measured, interval));
}

function unevenOf(
  hand: HandOrBoth,
  { unevenness }: HandTake,
  interval: number | null,
): readonly Finding[] {
  if (unevenness === null || interval === null) return [];
  const units = unitsOf(unevenness, interval);
  return units > FAIR ? [{ kind: 'uneven', hand, units }] : [];
}
