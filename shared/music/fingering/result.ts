/** The fingerings of an arpeggio: the best, its alternatives, and what each of them means for the hand. */
import { isBlackKey } from '../sequence';
import { type Cost, costOf } from './cost';
import { asRightHand, type Line, lineOf } from './line';
import { fingersOfRun } from './plan';
import {
  changesOf,
  type FingeredNote,
  type Position,
  type PositionChange,
  positionsOf,
} from './positions';
import { plansInOrder } from './search';
import { AVERAGE_SPAN } from './spans';
import type { Finger, FingerPlan, Question } from './types';

export interface Fingering {
  readonly plan: FingerPlan;
  /** From the lowest note of the run to the highest; the way down takes the same fingers backwards. */
  readonly fingers: readonly Finger[];
  /** Of the run, or of two octaves where it has one: a single octave does not show the pattern. */
  readonly cost: Cost;
  /** Lowest first. */
  readonly positions: readonly Position[];
  /** From the start to the far end and back. */
  readonly changes: readonly PositionChange[];
}

export interface Fingerings {
  readonly best: Fingering;
  /** Two to five, best first. */
  readonly alternatives: readonly Fingering[];
}

const FEWEST = 2;
const MOST = 5;
/** Points beyond the best after which a further alternative is no longer worth showing (P). */
const WORTH_SHOWING = 50;
/** How many plans are looked at for that; most of them only mix the ends of others. */
const LOOKED_AT = 40;

/** The run that is asked for, and the one that is costed. Throws a FingeringError for a bad question. */
function linesOf(question: Question): readonly [asked: Line, costed: Line] {
  const asked = lineOf(question);
  return [asked, question.octaves > 1 ? asked : lineOf(question, 2)];
}

function fingeringOf(
  question: Question,
  [asked, costed]: readonly [Line, Line],
  plan: FingerPlan,
): Fingering {
  const { keys, hand, octaves, span = AVERAGE_SPAN } = question;
  const fingers = fingersOfRun(plan, octaves);
  const notes = fingers.map((finger, index): FingeredNote => {
    const key = keys[index % keys.length]! + 12 * Math.floor(index / keys.length);
    return { index, key, black: isBlackKey(key), finger };
  });
  return {
    plan,
    fingers,
    cost: costOf(costed, asRightHand(plan, hand)),
    positions: positionsOf(notes, hand, span),
    changes: changesOf(notes, hand, asked, span),
  };
}

/** What a plan means for the hand, whether it was found or is a person's own. Throws a FingeringError as `lineOf` does. */
export const analyse = (question: Question, plan: FingerPlan): Fingering =>
  fingeringOf(question, linesOf(question), plan);

/** Whether a plan is a choice of its own: another pattern, or the best one's pattern with one end changed. */
function isOwnChoice(plan: FingerPlan, found: readonly FingerPlan[]): boolean {
  const code = plan.pattern.join('');
  if (found.every(({ pattern }) => pattern.join('') !== code)) return true;
  const best = found[0]!;
  const isSame = (end: 'low' | 'high') => plan[end].join('') === best[end].join('');
  return best.pattern.join('') === code && (isSame('low') || isSame('high'));
}

/** The best fingering of a question and its alternatives. Throws a FingeringError for a bad question. */
export function fingeringsOf(question: Question): Fingerings {
  const lines = linesOf(question);
  const found: FingerPlan[] = [];
  const seen = new Set<string>();
  let limit = Infinity;
  for (const { plan, cost } of plansInOrder(lines[1], LOOKED_AT)) {
    if (limit === Infinity) limit = cost + WORTH_SHOWING;
    if (found.length > MOST || (found.length > FEWEST && cost > limit)) break;
    // Two plans may differ inside a run only, and look alike over one octave.
    const digits = fingersOfRun(plan, question.octaves).join('');
    if (seen.has(digits) || !isOwnChoice(plan, found)) continue;
    seen.add(digits);
    found.push(plan);
  }
  const [best, ...alternatives] = found.map((plan) =>
    fingeringOf(question, lines, asRightHand(plan, question.hand)),
  );
  return { best: best!, alternatives };
}
