/** Lengths as notation can write them: cut at beats and bars, tied, beamed, and bound into triplets. */
import { PARTS_OF_BEAT, type ScoreNote } from '../music/score';

/** Bars of four crotchets. */
export const BAR = 4 * PARTS_OF_BEAT;

export interface NoteValue {
  /** In parts of a beat. */
  readonly length: number;
  /** MusicXML's name of the note's shape. */
  readonly type: string;
  readonly dots: 0 | 1;
  /** Three in the time of two. */
  readonly isTriplet: boolean;
  /** Beams, or flags of a note on its own. */
  readonly beams: number;
}

function valueOf(length: number, type: string, beams: number): readonly NoteValue[] {
  const plain: NoteValue = { length, type, dots: 0, isTriplet: false, beams };
  return [
    { ...plain, length: length * 1.5, dots: 1 },
    plain,
    { ...plain, length: (length * 2) / 3, isTriplet: true },
  ];
}

/** Longest first; what would be longer than a bar or not a whole number of parts isn't one. */
const VALUES: readonly NoteValue[] = [
  ...valueOf(96, 'whole', 0),
  ...valueOf(48, 'half', 0),
  ...valueOf(24, 'quarter', 0),
  ...valueOf(12, 'eighth', 1),
  ...valueOf(6, '16th', 2),
  ...valueOf(3, '32nd', 3),
]
  .filter(({ length }) => length <= BAR && Number.isInteger(length))
  // A triplet must lie within one beat; and 2 parts are a triplet of 32nds, which nobody could read.
  .filter(({ length, isTriplet }) => !isTriplet || (length < PARTS_OF_BEAT && length > 2))
  .toSorted((a, b) => b.length - a.length);

export type Beam = 'begin' | 'continue' | 'end' | 'forward hook' | 'backward hook';

/** A note, chord or rest, or that part of one which a single note value can write. */
export interface Piece {
  readonly note: ScoreNote;
  /** In parts of a beat from the beginning. */
  readonly at: number;
  readonly value: NoteValue;
  readonly isTiedBack: boolean;
  readonly isTiedOn: boolean;
  /** First beam first; none for a note on its own. */
  readonly beams: readonly Beam[];
  readonly startsTriplet: boolean;
  readonly endsTriplet: boolean;
}

type Cut = Pick<Piece, 'note' | 'at' | 'value' | 'isTiedBack' | 'isTiedOn'>;

export const endOf = ({ at, value }: Cut): number => at + value.length;
const beatOf = ({ at }: Cut): number => Math.floor(at / PARTS_OF_BEAT);
export const barOf = ({ at }: Cut): number => Math.floor(at / BAR);
export const isRest = ({ keys }: ScoreNote): boolean => keys.length === 0;

/** Whether a value may be the beginning of a longer length, tied to the rest of it. */
const canBegin = (value: NoteValue, length: number): boolean =>
  length > PARTS_OF_BEAT
    ? value.length % PARTS_OF_BEAT === 0
    : value.isTriplet === (length % 3 !== 0);

/** A rest that would hide the beats: a long one with a dot, or one across the middle of the bar. */
const isHardRest = ({ length, dots }: NoteValue, at: number): boolean =>
  length > PARTS_OF_BEAT && (dots > 0 || at % length !== 0);

/** The longest value that may begin here: nothing crosses a bar, and only what begins on a beat crosses the next. */
function nextValue(note: ScoreNote, at: number, length: number): NoteValue {
  const intoBeat = at % PARTS_OF_BEAT;
  const wanted = Math.min(length, intoBeat === 0 ? BAR - (at % BAR) : PARTS_OF_BEAT - intoBeat);
  const found = VALUES.find(
    (value) =>
      (value.length === wanted || (value.length < wanted && canBegin(value, wanted))) &&
      !(isRest(note) && isHardRest(value, at)),
  );
  if (!found) throw new RangeError(`no note value for ${length} parts of a beat at ${at}`);
  return found;
}

function cutsOf(note: ScoreNote, from: number): readonly Cut[] {
  const cuts: Cut[] = [];
  const end = from + note.length;
  for (let at = from; at < end;) {
    const value = nextValue(note, at, end - at);
    const next = at + value.length;
    const canTie = !isRest(note);
    cuts.push({ note, at, value, isTiedBack: canTie && at > from, isTiedOn: canTie && next < end });
    at = next;
  }
  return cuts;
}

/** The beams of one note of a beamed group, given how many each note has. */
function beamsIn(counts: readonly number[], place: number): readonly Beam[] {
  if (counts.length < 2) return [];
  return Array.from({ length: counts[place]! }, (_, level) => {
    const goesBack = (counts[place - 1] ?? 0) > level;
    const goesOn = (counts[place + 1] ?? 0) > level;
    if (goesBack) return goesOn ? 'continue' : 'end';
    if (goesOn) return 'begin';
    return place === 0 ? 'forward hook' : 'backward hook';
  });
}

/** The pieces around one that belong with it: next to each other, in one beat, and all of one kind. */
function groupOf(
  cuts: readonly Cut[],
  place: number,
  belongs: (cut: Cut) => boolean,
): { readonly group: readonly Cut[]; readonly place: number } {
  const fits = (cut: Cut | undefined): boolean =>
    cut !== undefined && beatOf(cut) === beatOf(cuts[place]!) && belongs(cut);
  if (!fits(cuts[place])) return { group: [], place: 0 };
  let [first, last] = [place, place];
  while (fits(cuts[first - 1])) first--;
  while (fits(cuts[last + 1])) last++;
  return { group: cuts.slice(first, last + 1), place: place - first };
}

/**
 * The notes of one hand as they are written, one after the other from the beginning. Throws a RangeError for a length
 * that has no note value.
 */
export function piecesOf(notes: readonly ScoreNote[]): readonly Piece[] {
  let at = 0;
  const cuts = notes.flatMap((note) => {
    const from = at;
    at += note.length;
    return cutsOf(note, from);
  });
  return cuts.map((cut, i): Piece => {
    const beamed = groupOf(cuts, i, ({ note, value }) => !isRest(note) && value.beams > 0);
    const triplet = groupOf(cuts, i, ({ value }) => value.isTriplet);
    const counts = beamed.group.map(({ value }) => value.beams);
    return {
      ...cut,
      beams: counts.length === 0 ? [] : beamsIn(counts, beamed.place),
      startsTriplet: triplet.group.length > 0 && triplet.place === 0,
      endsTriplet: triplet.group.length > 0 && triplet.place === triplet.group.length - 1,
    };
  });
}
