/** Which clef a staff has in each beat, and where it is written an octave lower or higher: few ledger lines, few changes. */
import { notePartsOf, type NoteName } from '../music/theory';
import { beatOf, type Piece } from './musicxml-pieces';

export type Clef = 'treble' | 'bass';

export interface BeatLook {
  readonly clef: Clef;
  /** Octaves from what is written to what sounds: 1 under an 8va, -1 over an 8vb. */
  readonly octaves: -1 | 0 | 1;
}

/** Places on the staff, counted in letter steps from C0. */
const placeOf = (name: NoteName): number => {
  const { letter, octave } = notePartsOf(name);
  return 7 * octave! + 'CDEFGAB'.indexOf(letter);
};
const LINES: Readonly<Record<Clef, { readonly bottom: number; readonly top: number }>> = {
  treble: { bottom: placeOf('E4'), top: placeOf('F5') },
  bass: { bottom: placeOf('G2'), top: placeOf('A3') },
};

/** Ledger lines to be borne before the other clef is better, and before an octave sign is (common practice, no source). */
const LEDGERS_BEFORE_CLEF = 2;
const LEDGERS_BEFORE_OCTAVE = 3;

const linesAbove = (clef: Clef, places: readonly number[]): number =>
  Math.max(0, ...places.map((place) => Math.floor((place - LINES[clef].top) / 2)));
const linesBelow = (clef: Clef, places: readonly number[]): number =>
  Math.max(0, ...places.map((place) => Math.floor((LINES[clef].bottom - place) / 2)));
const ledgers = (clef: Clef, places: readonly number[]): number =>
  Math.max(linesAbove(clef, places), linesBelow(clef, places));

function lookOf(places: readonly number[], before: Clef): BeatLook {
  const other: Clef = before === 'treble' ? 'bass' : 'treble';
  const needed = ledgers(before, places);
  const clef = needed > LEDGERS_BEFORE_CLEF && ledgers(other, places) < needed ? other : before;
  if (linesAbove(clef, places) > LEDGERS_BEFORE_OCTAVE) return { clef, octaves: 1 };
  if (linesBelow(clef, places) > LEDGERS_BEFORE_OCTAVE) return { clef, octaves: -1 };
  return { clef, octaves: 0 };
}

/** The look of every beat of a staff; a beat in which nothing begins keeps the clef. `usual` is the staff's own clef. */
export function looksOf(pieces: readonly Piece[], beats: number, usual: Clef): readonly BeatLook[] {
  const places = Array.from({ length: beats }, (): number[] => []);
  for (const piece of pieces) {
    places[beatOf(piece)]!.push(...piece.note.keys.map(({ name }) => placeOf(name)));
  }
  let clef = usual;
  return places.map((all) => {
    const look = lookOf(all, clef);
    clef = look.clef;
    return look;
  });
}
