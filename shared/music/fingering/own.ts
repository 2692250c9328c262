/** A person's own fingering, typed as digits: read, and checked for whether a hand can play it at all. */
import { mirrored } from './line';
import { fingersOfRun } from './plan';
import type { Finger, FingerPlan, Hand, Question } from './types';

/** Why typed digits cannot be played. Notes are counted from the lowest, 0. */
export type OwnProblem =
  | { readonly kind: 'digits'; readonly found: string }
  | { readonly kind: 'count'; readonly found: number; readonly wanted: readonly [number, number] }
  /** One finger on two neighbouring notes, or two long fingers that would have to cross. */
  | {
      readonly kind: 'repeated' | 'crossing';
      readonly index: number;
      readonly from: Finger;
      readonly to: Finger;
    }
  /** One octave can be played, but does not show how it goes on into the next. */
  | { readonly kind: 'unclear'; readonly wanted: number }
  /** Two octaves can be played, but no octave of them can follow itself. */
  | { readonly kind: 'irregular' };

export type OwnFingering =
  | { readonly ok: true; readonly plan: FingerPlan }
  | { readonly ok: false; readonly problem: OwnProblem };

/** The first step on a way up, from note `index` to the next, that no hand can play; null when all can be. */
function firstUnplayable(fingers: readonly Finger[], hand: Hand): OwnProblem | null {
  for (let index = 0; index + 1 < fingers.length; index++) {
    const [from, to] = [fingers[index]!, fingers[index + 1]!];
    if (from === to) return { kind: 'repeated', index, from, to };
    const isInOrder = hand === 'right' ? to > from : to < from;
    const isPass = hand === 'right' ? to === 1 : from === 1;
    if (!isInOrder && !isPass) return { kind: 'crossing', index, from, to };
  }
  return null;
}

/** Why a plan cannot be played, or null. Three octaves show every step that a longer run can have. */
export const problemOf = (plan: FingerPlan, hand: Hand): OwnProblem | null =>
  firstUnplayable(fingersOfRun(plan, 3), hand);

/** The fingers of two octaves, the top note included, read as a pattern with a free beginning. */
function planOfTwoOctaves(fingers: readonly Finger[]): FingerPlan {
  const size = (fingers.length - 1) / 2;
  const pattern = fingers.slice(size, 2 * size);
  const low = fingers.slice(0, size);
  while (low.length > 1 && low.at(-1) === pattern[low.length - 1]) low.pop();
  return { low, pattern, high: [fingers.at(-1)!] };
}

const exceptions = ({ low, high }: FingerPlan): number => low.length + high.length;

/** Both readings of two octaves, the second or the first as the pattern; that with fewer exceptions comes first. */
function plansOfTwoOctaves(fingers: readonly Finger[]): readonly FingerPlan[] {
  const readings = [
    planOfTwoOctaves(fingers),
    mirrored(planOfTwoOctaves(fingers.toReversed())),
  ] as const;
  return readings.toSorted((a, b) => exceptions(a) - exceptions(b));
}

/**
 * Plans that go on from one octave and its top note. Inside a run the bottom note takes the finger of one of the ends,
 * the upper one by preference, but never the fifth (1235 goes on with 1, 2124 with 4, 5421 with 1).
 */
function plansOfOneOctave(fingers: readonly Finger[]): readonly FingerPlan[] {
  const [bottom, top] = [fingers[0]!, fingers.at(-1)!];
  return [top, bottom]
    .filter((inner) => inner !== 5)
    .map((inner) => ({ low: [bottom], pattern: [inner, ...fingers.slice(1, -1)], high: [top] }));
}

/**
 * Reads fingers from the lowest note upwards, over one octave or two with the top note ("1235", "1 2 3 1 2 3 5"). A
 * fingering is never called wrong; it is only told where fingers cannot follow each other.
 */
export function readOwn(
  text: string,
  { keys, hand }: Pick<Question, 'keys' | 'hand'>,
): OwnFingering {
  const digits = text.replace(/[\s,.|-]+/g, '');
  const odd = digits.match(/[^1-5]/);
  if (odd || digits === '')
    return { ok: false, problem: { kind: 'digits', found: odd?.[0] ?? '' } };
  const fingers = Array.from(digits, (digit) => Number(digit) as Finger);
  const wanted = [keys.length + 1, 2 * keys.length + 1] as const;
  if (!wanted.includes(fingers.length))
    return { ok: false, problem: { kind: 'count', found: fingers.length, wanted } };
  const isOneOctave = fingers.length === wanted[0];
  const plans = isOneOctave ? plansOfOneOctave(fingers) : plansOfTwoOctaves(fingers);
  const plan = plans.find((candidate) => problemOf(candidate, hand) === null);
  if (plan) return { ok: true, plan };
  const problem =
    firstUnplayable(fingers, hand) ??
    (isOneOctave ? { kind: 'unclear', wanted: wanted[1] } : { kind: 'irregular' });
  return { ok: false, problem };
}
