/** All rules together: their sum for the search, their list for the explanation. */
import { HAND_RULES, type HandCause } from './ergonomic';
import type { Line } from './line';
import { fingersOfRun } from './plan';
import { applyRules, sumOf } from './rules';
import {
  extraThumb,
  highEnd,
  lateThumb,
  lowEnd,
  neededThumbs,
  TRADITION_RULES,
  type TraditionCause,
} from './tradition';
import type { Finger, FingerPlan } from './types';

export type Cause = HandCause | TraditionCause;

/**
 * What the note `i` adds to a way up, given its finger and those of the two notes before it (null where there is none).
 * Each value is computed once.
 */
export function addedCosts(
  line: Line,
): (i: number, first: Finger | null, second: Finger | null, third: Finger) => number {
  const known = new Float64Array(216 * line.pitches.length).fill(-1);
  return (i, first, second, third) => {
    const place = i * 216 + (first ?? 0) * 36 + (second ?? 0) * 6 + third;
    const value = known[place]!;
    if (value >= 0) return value;
    const fingers = [first, second, third] as const;
    const sum = sumOf(HAND_RULES, line, i, fingers) + sumOf(TRADITION_RULES, line, i, fingers);
    known[place] = sum;
    return sum;
  };
}

/**
 * Points of one way through the run. The way back has the same fingers, and costs the same but for the one rule that
 * looks at a direction (3 to 4).
 */
export interface Cost {
  readonly total: number;
  /** The part that the hand feels: the ergonomic rules. */
  readonly hand: number;
  /** The part for departing from tradition. */
  readonly tradition: number;
  /** By rule; those without points are left out. */
  readonly causes: Readonly<Partial<Record<Cause, number>>>;
}

/** The cost of any playable plan, the search's own or a person's. */
export function costOf(line: Line, plan: FingerPlan): Cost {
  const fingers = fingersOfRun(plan, line.octaves);
  const causes: Partial<Record<Cause, number>> = {};
  const cost = { hand: 0, tradition: 0 };
  const adder = (part: 'hand' | 'tradition') => (cause: Cause, points: number) => {
    if (points === 0) return;
    causes[cause] = (causes[cause] ?? 0) + points;
    cost[part] += points;
  };
  const addHand = adder('hand');
  const addTradition = adder('tradition');
  for (const [i, finger] of fingers.entries()) {
    const three = [fingers[i - 2] ?? null, fingers[i - 1] ?? null, finger] as const;
    applyRules(HAND_RULES, line, i, three, addHand);
    applyRules(TRADITION_RULES, line, i, three, addTradition);
  }
  const { pattern } = plan;
  const firstThumb = pattern.indexOf(1);
  let thumbs = -neededThumbs(line);
  for (const [tone, finger] of pattern.entries()) {
    const begun = tone > firstThumb;
    addTradition('lateThumb', line.octaves * lateThumb(line, tone, finger, begun));
    thumbs += extraThumb(finger, begun);
  }
  addTradition('extraThumb', line.octaves * Math.max(0, thumbs));
  addTradition('lowEnd', lowEnd(line, fingers[0]!, pattern[0]!, fingers[1]!));
  addTradition('highEnd', highEnd(fingers.at(-1)!, pattern[0]!));
  return { total: cost.hand + cost.tradition, ...cost, causes };
}
