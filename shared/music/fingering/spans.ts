/** How far apart two fingers of a hand can lie. */
import { type Finger, FingeringError } from './types';

/** In semitones from the first finger up to the second; negative where the second finger is passed over the first. */
export interface Span {
  readonly minPractical: number;
  readonly minComfortable: number;
  readonly minRelaxed: number;
  readonly maxRelaxed: number;
  readonly maxComfortable: number;
  readonly maxPractical: number;
}

type Row = readonly [Finger, Finger, number, number, number, number, number, number];

/**
 * Parncutt, Sloboda, Clarke, Raekallio & Desain 1997, Music Perception 14(4):341-382, right hand. Read at
 * second hand in two places (F2), which differ in one number: 10 or 11 for 1-5, most relaxed.
 */
const ROWS: readonly Row[] = [
  [1, 2, -5, -3, 1, 5, 8, 10],
  [1, 3, -4, -2, 3, 7, 10, 12],
  [1, 4, -3, -1, 5, 9, 12, 14],
  [1, 5, -1, 1, 7, 10, 13, 15],
  [2, 3, 1, 1, 1, 2, 3, 5],
  [2, 4, 1, 1, 3, 4, 5, 7],
  [2, 5, 2, 2, 5, 6, 8, 10],
  [3, 4, 1, 1, 1, 2, 2, 4],
  [3, 5, 1, 1, 3, 4, 5, 7],
  [4, 5, 1, 1, 1, 2, 3, 5],
];

/** The same pair named the other way round: exchange least and most, and negate (the 1997 paper's rule). */
const swapped = (span: Span): Span => ({
  minPractical: -span.maxPractical,
  minComfortable: -span.maxComfortable,
  minRelaxed: -span.maxRelaxed,
  maxRelaxed: -span.minRelaxed,
  maxComfortable: -span.minComfortable,
  maxPractical: -span.minPractical,
});

const SAME_FINGER: Span = {
  minPractical: 0,
  minComfortable: 0,
  minRelaxed: 0,
  maxRelaxed: 0,
  maxComfortable: 0,
  maxPractical: 0,
};

const place = (first: Finger, second: Finger): number => first * 6 + second;

const TABLE: readonly Span[] = (() => {
  const table = Array.from({ length: 36 }, () => SAME_FINGER);
  for (const [first, second, ...limits] of ROWS) {
    const [minPractical, minComfortable, minRelaxed, maxRelaxed, maxComfortable, maxPractical] =
      limits;
    const span = {
      minPractical,
      minComfortable,
      minRelaxed,
      maxRelaxed,
      maxComfortable,
      maxPractical,
    };
    table[place(first, second)] = span;
    table[place(second, first)] = swapped(span);
  }
  return table;
})();

/** The span of the average hand from one finger up to another; the same finger twice has none. */
export const spanOf = (first: Finger, second: Finger): Span => TABLE[place(first, second)]!;

/** The table's comfortable reach from thumb to fifth finger: the hand for which it was made. */
export const AVERAGE_SPAN = spanOf(1, 5).maxComfortable;
/** A small child's fifth and a very large hand's twelfth: beyond these the table says nothing sensible (P). */
export const SMALLEST_SPAN = 7;
export const LARGEST_SPAN = 19;

/** A child's comfortable sixth (P). */
const CHILD_SPAN = 8;
export const CHILD_WIDENING = AVERAGE_SPAN / CHILD_SPAN;

/**
 * How much wider an interval is for a hand than for the average one: 1.3 for a hand that reaches ten semitones. A hand's
 * reaches are taken to grow in proportion (P). Throws a FingeringError outside SMALLEST_SPAN to LARGEST_SPAN.
 */
export function widening(handSpan: number): number {
  if (handSpan >= SMALLEST_SPAN && handSpan <= LARGEST_SPAN) return AVERAGE_SPAN / handSpan;
  throw new FingeringError(`hand span of ${handSpan} semitones`);
}

/** 0 for the average hand and larger ones, which need no wider fingering because they could take it; 1 for a child's. */
export const smallness = (handSpan: number): number =>
  Math.max(0, (widening(handSpan) - 1) / (CHILD_WIDENING - 1));
