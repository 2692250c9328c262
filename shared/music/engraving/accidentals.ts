/**
 * Which accidentals are printed beside the key signature. There are no bars within a run, so the way up and the way down
 * take their place (common practice for music without bar lines, no source): an accidental holds at its line or space
 * until the system ends, the clef or the octave sign changes, the next arpeggio of a round begins, or the first beat
 * after a turn.
 */
import { PARTS_OF_BEAT } from '../score';
import { notePartsOf } from '../theory';
import type { Piece } from './pieces';
import { turnsOf } from './placed';
import { type Reading, stepOnStaff } from './reading';
import { alterInKey } from './signature';

export type Accidental = 'double flat' | 'flat' | 'natural' | 'sharp' | 'double sharp';

const ACCIDENTALS: readonly Accidental[] = [
  'double flat',
  'flat',
  'natural',
  'sharp',
  'double sharp',
];

interface AccidentalOptions {
  readonly starts: ReadonlySet<number>;
  readonly fifthsOf: (place: number) => number;
}

/**
 * For each note one accidental, or none, for each of its keys. `starts` are the places of systems and of joins,
 * `fifthsOf` tells the key at a place.
 */
export function accidentalsOf(
  notes: readonly Piece[],
  readings: readonly Reading[],
  { starts, fifthsOf }: AccidentalOptions,
): readonly (readonly (Accidental | null)[])[] {
  const turns = new Set(turnsOf(notes));
  const held = new Map<number, number>();
  let hasTurned = false;
  return notes.map((note, i) => {
    const reading = readings[i]!;
    const isOnBeat = note.place % PARTS_OF_BEAT === 0;
    hasTurned ||= turns.has(note.place);
    if (starts.has(note.place) || reading !== readings[i - 1] || (hasTurned && isOnBeat)) {
      held.clear();
      hasTurned = false;
    }
    return note.keys.map(({ name }) => {
      // A tie carries its accidental with it.
      if (note.isTiedBack) return null;
      const { alter } = notePartsOf(name);
      const step = stepOnStaff(name, reading);
      const usual = alterInKey(name, fifthsOf(note.place));
      if ((held.get(step) ?? usual) === alter) return null;
      held.set(step, alter);
      return ACCIDENTALS[alter + 2]!;
    });
  });
}
