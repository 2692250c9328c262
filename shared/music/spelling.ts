/** How the notes of an arpeggio are spelt: letter steps from the bottom note, which for a black key has two names. */
import { type Chord, chordOf, type ChordId } from './chords';
import { type BlackNote, isBlack, type StartingNote } from './deck';
import type { KeySignature } from './score';
import { notePartsOf, type NoteName, transpose } from './theory';

/** Names that the person has fixed for black starting notes; a note that is missing takes the usual name. */
export type BlackNames = Readonly<Partial<Record<BlackNote, 'sharp' | 'flat'>>>;

const PITCH_CLASS: Readonly<Record<StartingNote, number>> = {
  c: 0,
  db: 1,
  d: 2,
  eb: 3,
  e: 4,
  f: 5,
  gb: 6,
  g: 7,
  ab: 8,
  a: 9,
  bb: 10,
  b: 11,
};

/** Semitones above C, 0 to 11. */
export const pitchClassOf = (note: StartingNote): number => PITCH_CLASS[note];

const SHARP_NAME: Readonly<Record<BlackNote, NoteName>> = {
  db: 'C#',
  eb: 'D#',
  gb: 'F#',
  ab: 'G#',
  bb: 'A#',
};
const FLAT_NAME: Readonly<Record<BlackNote, NoteName>> = {
  db: 'Db',
  eb: 'Eb',
  gb: 'Gb',
  ab: 'Ab',
  bb: 'Bb',
};

/**
 * Which name wins where both keys have six accidentals (F sharp or G flat major, D sharp or E flat minor): the one
 * under which the key on its own is best known. Common practice, no source.
 */
const EVEN_CHOICE: Readonly<Record<BlackNote, 'sharp' | 'flat'>> = {
  db: 'sharp',
  eb: 'flat',
  gb: 'sharp',
  ab: 'flat',
  bb: 'flat',
};

/** Both names of a starting note, sharp first; a white key has one. */
export function bottomNames(note: StartingNote): readonly NoteName[] {
  return isBlack(note) ? [SHARP_NAME[note], FLAT_NAME[note]] : [note.toUpperCase()];
}

const FIFTHS = 'FCGDAEB';

/** Sharps (positive) or flats (negative) of the key signature: fifths from C for major, a minor third less for minor. */
function keySignature(tonic: NoteName, mode: 'major' | 'minor'): number {
  const { letter, alter } = notePartsOf(tonic);
  return FIFTHS.indexOf(letter) - 1 + 7 * alter - (mode === 'minor' ? 3 : 0);
}

/** Sharps (positive) or flats (negative) in the key of a chord on a bottom note: ("D", major 6) is B flat major, -2. */
export function keySignatureOf(bottom: NoteName, chord: Chord): number {
  return keySignature(transpose(bottom, chord.key.tonic), chord.key.mode);
}

function bottomNameOf(note: StartingNote, chord: Chord, fixed: BlackNames): NoteName {
  if (!isBlack(note)) return note.toUpperCase();
  const sharp = SHARP_NAME[note];
  const flat = FLAT_NAME[note];
  const choice = fixed[note];
  if (choice) return choice === 'sharp' ? sharp : flat;
  const sharps = Math.abs(keySignatureOf(sharp, chord));
  const flats = Math.abs(keySignatureOf(flat, chord));
  if (sharps === flats) return EVEN_CHOICE[note] === 'sharp' ? sharp : flat;
  return sharps < flats ? sharp : flat;
}

/**
 * The note names of a chord from the bottom note upwards, without octave: ("d", "major-6") is D F Bb, never D F A#.
 * A black bottom note takes the name with the simpler key, unless the person has fixed one.
 */
export function spell(
  note: StartingNote,
  chordId: ChordId,
  fixed: BlackNames = {},
): readonly NoteName[] {
  const chord = chordOf(chordId);
  const bottom = bottomNameOf(note, chord, fixed);
  return chord.intervals.map((interval) => transpose(bottom, interval));
}

const MOST_ACCIDENTALS = 7;

/** The key that a chord belongs to; null where no signature can tell it, as D flat minor would need eight flats. */
export function ownKeyOf(
  note: StartingNote,
  chordId: ChordId,
  fixed: BlackNames = {},
): KeySignature | null {
  const chord = chordOf(chordId);
  const fifths = keySignatureOf(bottomNameOf(note, chord, fixed), chord);
  return Math.abs(fifths) > MOST_ACCIDENTALS ? null : { fifths, mode: chord.key.mode };
}
