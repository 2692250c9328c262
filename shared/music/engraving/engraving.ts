/** A score as it is written down: everything that an engraver decides before drawing, system by system. */
import type { Finger, Hand } from '../fingering/types';
import { PARTS_OF_BEAT, type Score } from '../score';
import { type Touch, touchesOf } from '../pedal';
import { type NoteName, notePartsOf } from '../theory';
import { type Accidental, accidentalsOf } from './accidentals';
import { beamsOf, type Group, type Triplet, tripletsOf } from './beams';
import { type Piece, piecesBetween } from './pieces';
import { HANDS } from './placed';
import { type Clef, type Reading, readingsOf } from './reading';
import { fifthsAt, type PrintedKey, printedKeyAt } from './signature';
import type { Stretch } from './systems';

/** Said over the first note that is held into the next: more legato than legato (common practice, no source). */
export const HELD = 'legatissimo';

export interface EngravedKey {
  /** As written: an octave lower than it sounds under 8va. */
  readonly written: NoteName;
  readonly accidental: Accidental | null;
  readonly finger: Finger | null;
}

export interface EngravedNote extends Omit<Piece, 'keys' | 'fingers'> {
  /** None is a rest. */
  readonly keys: readonly EngravedKey[];
  readonly reading: Reading;
  /** The first of the hand that is held into the next: there a word says so. */
  readonly isFirstHeld: boolean;
}

export interface EngravedStaff {
  readonly hand: Hand;
  readonly notes: readonly EngravedNote[];
  /** Indices into the notes. */
  readonly beams: readonly Group[];
  readonly triplets: readonly Triplet[];
  /** The clef with which the next system begins, where that is another one: it is printed at the end of this. */
  readonly nextClef: Clef | null;
}

export interface Join {
  readonly place: number;
  readonly key: PrintedKey;
}

export interface EngravedSystem extends Stretch {
  /** Right hand first; a hand that rests throughout has no staff. */
  readonly staves: readonly EngravedStaff[];
  /** What is printed at its beginning. */
  readonly key: PrintedKey;
  /** Where the next arpeggio begins within the system. */
  readonly joins: readonly Join[];
  /** The join with which the next system begins: its line, and the key if it changes, are printed at the end of this. */
  readonly nextJoin: Join | null;
  /** Touches of the pedal that begin or go on in the system. */
  readonly touches: readonly Touch[];
  /** Whether the score ends here, and not only what is shown of it. */
  readonly isEnd: boolean;
}

function writtenAs(name: NoteName, { octaves }: Reading): NoteName {
  const { octave } = notePartsOf(name);
  return name.replace(/-?\d+$/, String(octave! - octaves));
}

function staffOf(
  score: Score,
  hand: Hand,
  stretches: readonly Stretch[],
): readonly EngravedStaff[] {
  const [from, to] = [stretches[0]!.from, stretches.at(-1)!.to];
  const pieces = piecesBetween(score, hand, from, to);
  const starts = new Set(stretches.map((stretch) => stretch.from));
  const readings = readingsOf(pieces, hand, starts);
  const accidentals = accidentalsOf(pieces, readings, {
    starts: new Set([...starts, ...score.joins]),
    fifthsOf: (place) => fifthsAt(score, place),
  });
  const firstHeld = pieces.findIndex(({ overlap }) => overlap);
  const all = pieces.map(({ fingers, ...piece }, i): EngravedNote => ({
    ...piece,
    reading: readings[i]!,
    isFirstHeld: i === firstHeld,
    keys: piece.keys.map(({ name }, k) => ({
      written: writtenAs(name, readings[i]!),
      accidental: accidentals[i]![k]!,
      finger: fingers[k] ?? null,
    })),
  }));
  const [beams, triplets] = [beamsOf(pieces), tripletsOf(pieces)];
  const indexAt = (place: number): number => pieces.filter((one) => one.place < place).length;
  return stretches.map((stretch): EngravedStaff => {
    const [start, end] = [indexAt(stretch.from), indexAt(stretch.to)];
    const isHere = (group: Group): boolean => group[0]! >= start && group[0]! < end;
    const fromStart = (group: Group): Group => group.map((i) => i - start);
    const [last, next] = [readings[end - 1]!, readings[end] ?? readings[end - 1]!];
    return {
      hand,
      notes: all.slice(start, end),
      beams: beams.filter(isHere).map(fromStart),
      triplets: triplets
        .filter(({ group }) => isHere(group))
        .map((one) => ({ ...one, group: fromStart(one.group) })),
      nextClef: next.clef === last.clef ? null : next.clef,
    };
  });
}

/** The systems that show `stretches` of a score (see breakerOf). */
export function engravingOf(
  score: Score,
  stretches: readonly Stretch[],
): readonly EngravedSystem[] {
  if (stretches.length === 0) return [];
  const staves = HANDS.filter((hand) => score[hand].length > 0).map((hand) =>
    staffOf(score, hand, stretches),
  );
  const lengths = HANDS.map((hand) => score[hand].reduce((sum, { length }) => sum + length, 0));
  const touches = touchesOf(score);
  const joinAt = (place: number): Join => ({ place, key: printedKeyAt(score, place, false) });
  return stretches.map((stretch, i) => ({
    ...stretch,
    touches: touches.filter(({ at, length }) => at < stretch.to && at + length > stretch.from),
    staves: staves.map((systems) => systems[i]!),
    key: printedKeyAt(score, stretch.from, true),
    joins: score.joins.filter((place) => place > stretch.from && place < stretch.to).map(joinAt),
    nextJoin:
      i < stretches.length - 1 && score.joins.includes(stretch.to) ? joinAt(stretch.to) : null,
    isEnd: stretch.to >= Math.max(...lengths),
  }));
}

/** The place of a step of an item or a round, where every step lasts equally long. */
export const placeOfStep = (score: Score, step: number): number =>
  (step * PARTS_OF_BEAT) / score.grouping;
