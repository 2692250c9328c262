/** Key signatures on the staff: which sharps or flats, on which lines and spaces, and where the key changes. */
import type { Score } from '../score';
import { notePartsOf, type NoteName } from '../theory';
import type { Clef } from './reading';

/** In the order in which sharps come; flats come in the opposite one. */
const LETTERS = 'FCGDAEB';
/** Steps above the bottom line of the treble clef; in the bass clef two lower. Common practice, the same in all books. */
const SHARP_STEPS = [8, 5, 9, 6, 3, 7, 4];
const FLAT_STEPS = [4, 7, 3, 6, 2, 5, 1];

/** 1 where the key has a sharp for a note's letter, -1 for a flat, else 0. `fifths` as in KeySignature. */
export function alterInKey(name: NoteName, fifths: number): number {
  const place = LETTERS.indexOf(notePartsOf(name).letter);
  return (fifths > 0 ? place : 6 - place) < Math.abs(fifths) ? Math.sign(fifths) : 0;
}

/** The steps from the bottom line of a clef on which the signs of a key stand, in their order. */
export function stepsOfKey(fifths: number, clef: Clef): readonly number[] {
  const steps = fifths > 0 ? SHARP_STEPS : FLAT_STEPS;
  return steps.slice(0, Math.abs(fifths)).map((step) => step - (clef === 'bass' ? 2 : 0));
}

/** What is printed where a key begins: its own signs, or, where it has none, naturals for those of the key before. */
export interface PrintedKey {
  readonly fifths: number;
  readonly isTakenBack: boolean;
}

const NOTHING: PrintedKey = { fifths: 0, isTakenBack: false };

/** The sharps (positive) or flats of the key at a place; 0 where none is printed. */
export const fifthsAt = ({ joins, keySignatures = [] }: Score, place: number): number =>
  keySignatures[joins.filter((join) => join <= place).length]?.fifths ?? 0;

/** What is printed at the beginning of a system, or at a join within it. */
export function printedKeyAt(score: Score, place: number, isStart: boolean): PrintedKey {
  const now = fifthsAt(score, place);
  const before = isStart ? 0 : fifthsAt(score, place - 1);
  if (now === before) return NOTHING;
  return now === 0 ? { fifths: before, isTakenBack: true } : { fifths: now, isTakenBack: false };
}
