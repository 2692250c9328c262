/** All rules together: their sum for the search, their list for the explanation. */
import {
  ERGONOMIC_NOTES,
  ERGONOMIC_PAIRS,
  ERGONOMIC_TRIPLES,
  type NoteRule,
  type PairRule,
  type TripleRule,
} from './ergonomic';
import type { Line } from './line';
import { fingersOfRun } from './plan';
import {
  highEnd,
  lowEnd,
  neededThumbs,
  patternCost,
  TRADITION_NOTES,
  TRADITION_PAIRS,
  TRADITION_TRIPLES,
} from './tradition';
import type { Finger, FingerPlan } from './types';

const NOTES = { ...ERGONOMIC_NOTES, ...TRADITION_NOTES };
const PAIRS = { ...ERGONOMIC_PAIRS, ...TRADITION_PAIRS };
const TRIPLES = { ...ERGONOMIC_TRIPLES, ...TRADITION_TRIPLES };

export type Cause =
  keyof typeof NOTES | keyof typeof PAIRS | keyof typeof TRIPLES | 'pattern' | 'lowEnd' | 'highEnd';

const noteRules: readonly NoteRule[] = Object.values(NOTES);
const pairRules: readonly PairRule[] = Object.values(PAIRS);
const tripleRules: readonly TripleRule[] = Object.values(TRIPLES);

/** What the note `i` adds to a way up, given its finger and those of the two notes before it, as far as there are any. */
export function addedCost(
  line: Line,
  i: number,
  first: Finger | null,
  second: Finger | null,
  third: Finger,
): number {
  let sum = 0;
  for (const rule of noteRules) sum += rule(line, i, third);
  if (second === null) return sum;
  for (const rule of pairRules) sum += rule(line, i, second, third);
  if (first === null) return sum;
  for (const rule of tripleRules) sum += rule(line, i, first, second, third);
  return sum;
}

/** `addedCost` of a line, each value computed once. */
export function rememberedCost(
  line: Line,
): (i: number, first: Finger | null, second: Finger | null, third: Finger) => number {
  const known = new Float64Array(216 * line.pitches.length).fill(-1);
  return (i, first, second, third) => {
    const place = i * 216 + (first ?? 0) * 36 + (second ?? 0) * 6 + third;
    const value = known[place]!;
    return value >= 0 ? value : (known[place] = addedCost(line, i, first, second, third));
  };
}

export type Tally = Readonly<Partial<Record<Cause, number>>>;

export function tallyOf(line: Line, plan: FingerPlan): Tally {
  const fingers = fingersOfRun(plan, line.octaves);
  const tally: Partial<Record<Cause, number>> = {};
  const add = (cause: Cause, points: number): void => {
    if (points !== 0) tally[cause] = (tally[cause] ?? 0) + points;
  };
  const entriesOf = <R>(rules: Readonly<Record<string, R>>) =>
    Object.entries(rules) as readonly (readonly [Cause, R])[];
  for (let i = 0; i < fingers.length; i++) {
    const [first, second, third] = [fingers[i - 2], fingers[i - 1], fingers[i]!];
    for (const [cause, rule] of entriesOf<NoteRule>(NOTES)) add(cause, rule(line, i, third));
    if (!second) continue;
    for (const [cause, rule] of entriesOf<PairRule>(PAIRS))
      add(cause, rule(line, i, second, third));
    if (!first) continue;
    for (const [cause, rule] of entriesOf<TripleRule>(TRIPLES))
      add(cause, rule(line, i, first, second, third));
  }
  const { pattern } = plan;
  const firstThumb = pattern.indexOf(1);
  for (const [tone, finger] of pattern.entries())
    add('pattern', line.octaves * patternCost(line, tone, finger, tone > firstThumb));
  add('pattern', -line.octaves * neededThumbs(line));
  add('lowEnd', lowEnd(line, fingers[0]!, pattern[0]!, fingers[1]!));
  add('highEnd', highEnd(fingers.at(-1)!, pattern[0]!));
  return tally;
}
