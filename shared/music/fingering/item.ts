/** Fingerings of the deck's items: from the steps of `sequenceOf` to the finger of every note. */
import type { Key, Step } from '../sequence';
import { fingersOfCourse } from './plan';
import type { Finger, FingerPlan, Hand, Question } from './types';

/** The fingers of one step; a hand that rests is null. */
export interface FingeredStep {
  readonly right: Finger | null;
  readonly left: Finger | null;
}

const keysOf = (steps: readonly Step[], hand: Hand): readonly Key[] =>
  steps.flatMap((step) => step[hand] ?? []);

const lowestOf = (keys: readonly Key[]): number => Math.min(...keys.map(({ midi }) => midi));
const highestOf = (keys: readonly Key[]): number => Math.max(...keys.map(({ midi }) => midi));

/**
 * What has to be asked for one hand of an item: its chord, its range in octaves and the end at which it begins. Null
 * when the hand rests. `span` as in Question.
 */
export function questionOf(
  steps: readonly Step[],
  hand: Hand,
  span?: number,
): (Required<Omit<Question, 'span'>> & Pick<Question, 'span'>) | null {
  const keys = keysOf(steps, hand);
  if (keys.length === 0) return null;
  const lowest = lowestOf(keys);
  const chord = new Set(keys.map(({ midi }) => midi).filter((midi) => midi < lowest + 12));
  return {
    keys: [...chord].toSorted((a, b) => a - b),
    hand,
    octaves: (highestOf(keys) - lowest) / 12,
    start: keys[0]!.midi === lowest ? 'low' : 'high',
    ...(span === undefined ? {} : { span }),
  };
}

function fingersOfHand(
  steps: readonly Step[],
  hand: Hand,
  plan: FingerPlan | undefined,
): readonly (Finger | null)[] {
  const keys = keysOf(steps, hand);
  if (!plan || keys.length === 0) return steps.map(() => null);
  const lowest = lowestOf(keys);
  const places = keys.map(
    ({ midi, tone }) => tone + plan.pattern.length * Math.floor((midi - lowest) / 12),
  );
  return fingersOfCourse(plan, places);
}

/**
 * The fingers of every step of an item, with each hand's plan: similar motion, and both forms of contrary motion with
 * all their turns. A hand without a plan has null throughout.
 */
export function fingersOfSteps(
  steps: readonly Step[],
  plans: Readonly<Partial<Record<Hand, FingerPlan>>>,
): readonly FingeredStep[] {
  const right = fingersOfHand(steps, 'right', plans.right);
  const left = fingersOfHand(steps, 'left', plans.left);
  return steps.map((_, i) => ({ right: right[i] ?? null, left: left[i] ?? null }));
}
