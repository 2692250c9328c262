/**
 * What teachers have agreed on for arpeggios, as points for each departure from it. The ergonomic model alone finds
 * the customary fingering in about a quarter of the cases, so these points weigh more than its own.
 *
 * Rules and their sources: thumbs on white keys, fifth finger at a start, stop or turn only (R. Kelley, F); the thumb
 * on the first white key from the inner end (Evansville, F); a third is reached with the fourth finger and a fourth with
 * the third (musicandhealth.co.uk, F), on a black key a third as well (blogitnow, F); sevenths thumb, then 2 3 4, from
 * a black key beginning with 2 (The Musician, May 1921, F); chords of black keys alone as if white (P). The points are
 * our own (P): they only have to outweigh each other and the ergonomic cost in the right order.
 */
import type { Line } from './line';
import type { NoteRule, PairRule, RuleSet, TripleRule } from './rules';
import type { Finger } from './types';

/** A rule that is kept wherever it can be: more than breaking it could save the hand (48 points in two octaves, D). */
const STRONG = 100;
/** A rule that leaves a choice: teachers print both, a small hand may turn to the other. */
const GAP = 24;
/** A habit that decides between fingerings which are nearly as good. */
const ORDER = 6;

const blackThumb: NoteRule = (line, i, finger) =>
  finger === 1 && line.black[i] && !line.allBlack ? STRONG : 0;

const innerFifth: NoteRule = (line, i, finger) =>
  finger === 5 && i > 0 && i < line.pitches.length - 1 ? STRONG : 0;

/** Chords of four notes and more are played with neighbouring fingers. */
const inOrder: PairRule = (line, _i, from, to) =>
  line.size > 3 && from > 1 && to > from + 1 ? ORDER : 0;

/** Beside the thumb lies the second finger. */
const secondFinger: TripleRule = (line, i, first, second, third) =>
  first === 1 && second !== 2 && third > second && i < line.pitches.length - 1 ? ORDER : 0;

/**
 * Triads: before the next thumb 3 for a fourth or more and 4 for a third; on a black key that lies close to the second
 * finger, 3 for a major third as well.
 */
const thirdOrFourth: TripleRule = (line, i, first, second, third) => {
  if (line.size > 3 || third !== 1 || first >= 3) return 0;
  const gap = line.pitches[i]! - line.pitches[i - 1]!;
  if (gap < 3) return 0;
  const step = line.pitches[i - 1]! - line.pitches[i - 2]!;
  const wanted = gap >= 5 || (gap === 4 && step <= 3 && line.black[i - 1]) ? 3 : 4;
  return second >= 3 && second !== wanted ? GAP : 0;
};

export type TraditionCause =
  | 'blackThumb'
  | 'innerFifth'
  | 'inOrder'
  | 'secondFinger'
  | 'thirdOrFourth'
  | 'lateThumb'
  | 'extraThumb'
  | 'lowEnd'
  | 'highEnd';

export const TRADITION_RULES: RuleSet<TraditionCause> = {
  notes: [
    ['blackThumb', blackThumb],
    ['innerFifth', innerFifth],
  ],
  pairs: [['inOrder', inOrder]],
  triples: [
    ['secondFinger', secondFinger],
    ['thirdOrFourth', thirdOrFourth],
  ],
};

/**
 * The thumb belongs on the first key that it can have: points for a chord note that another finger takes before it has
 * come (`begun`), in every octave.
 */
export const lateThumb = (line: Line, tone: number, finger: Finger, begun: boolean): number =>
  finger !== 1 && !begun && (line.allBlack || !line.black[tone]) ? STRONG : 0;

/**
 * The thumb comes as seldom as can be, for position changes are where arpeggios go wrong: points for every thumb after
 * the first of an octave.
 */
export const extraThumb = (finger: Finger, begun: boolean): number =>
  finger === 1 && begun ? STRONG : 0;

/** Those points that no fingering can do without: more than four notes need a second thumb, as 5 has no place inside. */
export const neededThumbs = (line: Line): number => STRONG * (Math.ceil(line.size / 4) - 1);

/** Points for a finger at an end that is neither what is usual there nor the next best. */
const ODD = 60;

/**
 * The low end: `first` and `pattern` fingers of the bottom note, `next` the finger of the note above. A start on a note
 * without the thumb begins with 2. A turn keeps the finger of the run, but not the fourth just after the thumb.
 */
export function lowEnd(line: Line, first: Finger, pattern: Finger, next: Finger): number {
  if (pattern === 1) return 0;
  if (first !== 2 && first !== pattern) return ODD;
  if (line.start === 'low') return first === 2 ? 0 : 3;
  if (first === 4 && next === 1) return 20;
  return first === pattern ? 0 : 20;
}

/** The high end: the fifth finger saves a pass for the sake of one note; any other finger stays as it is in the run. */
export function highEnd(top: Finger, pattern: Finger): number {
  if (pattern === 1) return top === 5 ? 0 : top === 1 ? 40 : ODD;
  return top === pattern ? 0 : top === 5 ? 14 : ODD;
}
