/** A rule gives points for what it finds at one note, at two neighbours or at three, of a run upwards. */
import type { Line } from './line';
import type { Finger } from './types';

export type NoteRule = (line: Line, i: number, finger: Finger) => number;
/** `i` is the upper of the two notes, `to` its finger. */
export type PairRule = (line: Line, i: number, from: Finger, to: Finger) => number;
/** `i` is the highest of the three notes, `third` its finger. */
export type TripleRule = (
  line: Line,
  i: number,
  first: Finger,
  second: Finger,
  third: Finger,
) => number;

export interface RuleSet<Cause extends string> {
  readonly notes: readonly (readonly [Cause, NoteRule])[];
  readonly pairs: readonly (readonly [Cause, PairRule])[];
  readonly triples: readonly (readonly [Cause, TripleRule])[];
}

/** The fingers of the note that is looked at and of the two below it; null where there is none. */
export type Fingers = readonly [first: Finger | null, second: Finger | null, third: Finger];

/** Calls `add` with the points of every rule for the note `i`, given its finger and those of the notes before it. */
export function applyRules<Cause extends string>(
  { notes, pairs, triples }: RuleSet<Cause>,
  line: Line,
  i: number,
  [first, second, third]: Fingers,
  add: (cause: Cause, points: number) => void,
): void {
  for (const [cause, rule] of notes) add(cause, rule(line, i, third));
  if (second === null) return;
  for (const [cause, rule] of pairs) add(cause, rule(line, i, second, third));
  if (first === null) return;
  for (const [cause, rule] of triples) add(cause, rule(line, i, first, second, third));
}

/** The sum of all points that `applyRules` would add. */
export function sumOf<Cause extends string>(
  { notes, pairs, triples }: RuleSet<Cause>,
  line: Line,
  i: number,
  [first, second, third]: Fingers,
): number {
  let sum = 0;
  for (const [, rule] of notes) sum += rule(line, i, third);
  if (second === null) return sum;
  for (const [, rule] of pairs) sum += rule(line, i, second, third);
  if (first === null) return sum;
  for (const [, rule] of triples) sum += rule(line, i, first, second, third);
  return sum;
}
