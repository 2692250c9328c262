/**
 * What a fingering costs the hand, rule by rule: the ergonomic model of Parncutt et al. 1997 (rules F2, each of weight
 * 1 as published), with three later changes: the practical limits are soft (Balliauw et al. 2017, F2), only the
 * fourth finger counts as weak and the rule about 3, 4 and 5 in a row is dropped (Jacobs 2001, F2).
 *
 * Each rule looks at one note, at two neighbours, or at three; fingers are those of the search's hand, going up. The
 * way down has the same fingers and, but for 3 to 4, the same cost, so the way up stands for both.
 */
import type { Line } from './line';
import type { NoteRule, PairRule, RuleSet, TripleRule } from './rules';
import { CHILD_WIDENING, spanOf } from './spans';
import type { Finger } from './types';

const above = (excess: number): number => Math.max(0, excess);
const rise = (line: Line, i: number, notes: number): number =>
  line.pitches[i]! - line.pitches[i - notes]!;

/**
 * Points for a reach within one placement of the hand, given what it costs the average hand. A child's hand feels the
 * interval wider; the hands between are taken to lie on the straight line from the one to the other (P). So the
 * smaller a hand is, the more every stretch weighs against the rest, and it is never given more of it.
 */
const forHand = (line: Line, size: number, points: (size: number) => number): number => {
  const average = points(size);
  return average + line.smallness * (points(size * CHILD_WIDENING) - average);
};

/** Points a semitone beyond what is practical: Balliauw et al. 2017 (F2). The 1997 model forbids it outright. */
const BEYOND_PRACTICAL = 10;

const beyondReach: PairRule = (line, i, from, to) => {
  const { minPractical, maxPractical } = spanOf(from, to);
  const size = rise(line, i, 1);
  return from > to
    ? BEYOND_PRACTICAL * above(size - maxPractical)
    : BEYOND_PRACTICAL *
        (above(minPractical - size) + forHand(line, size, (felt) => above(felt - maxPractical)));
};

const stretch: PairRule = (line, i, from, to) => {
  const { minComfortable, maxComfortable } = spanOf(from, to);
  const size = rise(line, i, 1);
  return from > to
    ? 2 * above(size - maxComfortable)
    : 2 *
        (above(minComfortable - size) +
          forHand(line, size, (felt) => above(felt - maxComfortable)));
};

/** A pair without the thumb is less free: double. */
const byPair = (from: Finger, to: Finger): number => (from === 1 || to === 1 ? 1 : 2);

const smallSpan: PairRule = (line, i, from, to) => {
  const size = rise(line, i, 1);
  const lack = from < to ? spanOf(from, to).minRelaxed - size : spanOf(to, from).minRelaxed + size;
  return byPair(from, to) * above(lack);
};

/** Only where fingers and notes go the same way: the published results fit this reading, not the rule's wording (F2). */
const largeSpan: PairRule = (line, i, from, to) =>
  from < to
    ? byPair(from, to) *
      forHand(line, rise(line, i, 1), (felt) => above(felt - spanOf(from, to).maxRelaxed))
    : 0;

const outside = (size: number, least: number, most: number): number =>
  above(size - most) + above(least - size);

/** Two points where the thumb is passed and the outer notes lie beyond one hand, one where only comfort is lost. */
const changeCount: TripleRule = (line, i, first, second, third) => {
  const size = rise(line, i, 2);
  const span = spanOf(first, third);
  if (outside(size, span.minComfortable, span.maxComfortable) === 0) return 0;
  return second === 1 && outside(size, span.minPractical, span.maxPractical) > 0 ? 2 : 1;
};

const changeSize: TripleRule = (line, i, first, _second, third) => {
  const { minComfortable, maxComfortable } = spanOf(first, third);
  return outside(rise(line, i, 2), minComfortable, maxComfortable);
};

const weakFinger: NoteRule = (_line, _i, finger) => (finger === 4 ? 1 : 0);

const threeToFour: PairRule = (_line, _i, from, to) => (from === 3 && to === 4 ? 1 : 0);

const fourOnBlack: PairRule = (line, i, from, to) => {
  const [lower, upper] = [line.black[i - 1], line.black[i]];
  return (from === 3 && to === 4 && !lower && upper) || (from === 4 && to === 3 && lower && !upper)
    ? 1
    : 0;
};

/** Two for each white neighbour. */
const whiteNeighbours = (line: Line, i: number): number =>
  2 * (Number(line.black[i - 1] === false) + Number(line.black[i + 1] === false));

const thumbOnBlack: NoteRule = (line, i, finger) =>
  finger === 1 && line.black[i] ? 1 + whiteNeighbours(line, i) : 0;

const fifthOnBlack: NoteRule = (line, i, finger) =>
  finger === 5 && line.black[i] ? whiteNeighbours(line, i) : 0;

const thumbPassing: PairRule = (line, i, from, to) => {
  if (to !== 1 || from === 1) return 0;
  if (line.black[i - 1] === line.black[i]) return 1;
  return line.black[i] ? 3 : 0;
};

export type HandCause =
  | 'weakFinger'
  | 'thumbOnBlack'
  | 'fifthOnBlack'
  | 'beyondReach'
  | 'stretch'
  | 'smallSpan'
  | 'largeSpan'
  | 'threeToFour'
  | 'fourOnBlack'
  | 'thumbPassing'
  | 'changeCount'
  | 'changeSize';

export const HAND_RULES: RuleSet<HandCause> = {
  notes: [
    ['weakFinger', weakFinger],
    ['thumbOnBlack', thumbOnBlack],
    ['fifthOnBlack', fifthOnBlack],
  ],
  pairs: [
    ['beyondReach', beyondReach],
    ['stretch', stretch],
    ['smallSpan', smallSpan],
    ['largeSpan', largeSpan],
    ['threeToFour', threeToFour],
    ['fourOnBlack', fourOnBlack],
    ['thumbPassing', thumbPassing],
  ],
  triples: [
    ['changeCount', changeCount],
    ['changeSize', changeSize],
  ],
};
