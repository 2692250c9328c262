/** Lengths as notation can write them: cut at beats and bars, and tied. */
import type { Hand } from '../fingering/types';
import { PARTS_OF_BEAT, type Score } from '../score';
import { beatOf, isRest, type PlacedNote, placedNotes } from './placed';
import { type NoteValue, PLAIN_VALUES, TRIPLET_VALUES } from './value';

/**
 * A note, chord or rest, or that part of one which a single note value can write. Place and length are the piece's own;
 * what is said of a note once (fingers, accent, position change, pedal) is said of its first piece, that it is held on of
 * its last.
 */
export interface Piece extends PlacedNote {
  readonly value: NoteValue;
  readonly isTiedBack: boolean;
  readonly isTiedOn: boolean;
}

const endOf = ({ place, length }: PlacedNote): number => place + length;

/** The beats, counted from 0, that are divided by three: something begins or ends in them off the grid of 32nds. */
function beatsInThree(notes: readonly PlacedNote[]): ReadonlySet<number> {
  const edges = notes.flatMap((note) => [note.place, endOf(note)]);
  return new Set(edges.filter((edge) => edge % 3 !== 0).map(beatOf));
}

/** A rest that would hide the beats: a long one with a dot, or one across the middle of the bar. */
const isHardRest = ({ length, isDotted }: NoteValue, at: number): boolean =>
  length > PARTS_OF_BEAT && (isDotted || at % length !== 0);

function cutsOf(note: PlacedNote, inThree: ReadonlySet<number>, bar: number): readonly Piece[] {
  const cuts: Piece[] = [];
  const end = endOf(note);
  const canTie = !isRest(note);
  const { overlap, ...said } = note;
  const again = { keys: note.keys, fingers: note.keys.map(() => null), change: null };
  const silent = note.isSilent === undefined ? {} : { isSilent: note.isSilent };
  for (let place = note.place; place < end;) {
    const value = nextValue(note, place, end - place, { inThree, bar });
    const { length } = value;
    const [isTiedBack, isTiedOn] = [canTie && place > note.place, canTie && place + length < end];
    const own = isTiedBack ? { ...again, ...silent } : said;
    const held = overlap !== undefined && !isTiedOn ? { overlap } : {};
    cuts.push({ ...own, ...held, length, place, value, isTiedBack, isTiedOn });
    place += length;
  }
  return cuts;
}

interface Metre {
  readonly inThree: ReadonlySet<number>;
  readonly bar: number;
}

/** The longest value that may begin here: nothing crosses a bar, and only what begins on a beat crosses the next. */
function nextValue(note: PlacedNote, at: number, length: number, metre: Metre): NoteValue {
  const { inThree, bar } = metre;
  const intoBeat = at % PARTS_OF_BEAT;
  const wanted = Math.min(length, intoBeat === 0 ? bar - (at % bar) : PARTS_OF_BEAT - intoBeat);
  const isLong = wanted > PARTS_OF_BEAT;
  const canStand = (value: NoteValue): boolean =>
    value.length === wanted ||
    (value.length < wanted && (!isLong || value.length % PARTS_OF_BEAT === 0));
  const isInThree = wanted < PARTS_OF_BEAT && inThree.has(beatOf(at));
  const found = (isInThree ? TRIPLET_VALUES : PLAIN_VALUES).find(
    (value) => canStand(value) && !(isRest(note) && isHardRest(value, at)),
  );
  if (!found) throw new RangeError(`no note value for ${length} parts of a beat at ${at}`);
  return found;
}

/**
 * The notes of one hand as they are written, in bars of so many parts of a beat, or without bars. Throws a RangeError for
 * a length that has no note value.
 */
export function piecesOf(notes: readonly PlacedNote[], bar = Infinity): readonly Piece[] {
  const inThree = beatsInThree(notes);
  return notes.flatMap((note) => cutsOf(note, inThree, bar));
}

/** What of a hand is written without bars at or after `from` and before `to`. */
export const piecesBetween = (
  score: Score,
  hand: Hand,
  from: number,
  to: number,
): readonly Piece[] =>
  piecesOf(placedNotes(score, hand)).filter(({ place }) => place >= from && place < to);
