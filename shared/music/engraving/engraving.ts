/** A score as it is written down: everything that an engraver decides before drawing, system by system. */
import type { Finger, Hand } from '../fingering/types';
import { PARTS_OF_BEAT, type Score } from '../score';
import { type NoteName, notePartsOf } from '../theory';
import { type Accidental, accidentalsOf } from './accidentals';
import { beamsOf, tripletsOf } from './beams';
import { HANDS, type PlacedNote, placedNotes } from './placed';
import { type Clef, type Reading, readingsOf } from './reading';
import type { Stretch } from './systems';
import { type NoteValue, valueOf } from './value';

export interface EngravedKey {
  /** As written: an octave lower than it sounds under 8va. */
  readonly written: NoteName;
  readonly accidental: Accidental | null;
  readonly finger: Finger | null;
}

export interface EngravedNote extends Pick<
  PlacedNote,
  'place' | 'length' | 'change' | 'isSilent' | 'isAccented' | 'hasPedal'
> {
  /** None is a rest. */
  readonly keys: readonly EngravedKey[];
  readonly value: NoteValue;
  readonly reading: Reading;
}

export interface EngravedStaff {
  readonly hand: Hand;
  readonly notes: readonly EngravedNote[];
  /** Indices into the notes. */
  readonly beams: readonly (readonly number[])[];
  readonly triplets: readonly (readonly number[])[];
  /** Whether the first triplet is to have its 3: only where the score begins, as the rest goes on in the same way. */
  readonly showsTriplet: boolean;
  /** The clef with which the next system begins, where that is another one: it is printed at the end of this. */
  readonly nextClef: Clef | null;
}

export interface EngravedSystem extends Stretch {
  /** Right hand first; a hand that rests throughout has no staff. */
  readonly staves: readonly EngravedStaff[];
  /** Places within the system at which the next arpeggio begins. */
  readonly joins: readonly number[];
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
  const placed = placedNotes(score, hand, from, to);
  const starts = new Set(stretches.map((stretch) => stretch.from));
  const readings = readingsOf(placed, hand, starts);
  const accidentals = accidentalsOf(placed, readings, new Set([...starts, ...score.joins]));
  const all = placed.map((note, i): EngravedNote => ({
    place: note.place,
    length: note.length,
    change: note.change,
    ...(note.isSilent ? { isSilent: true } : {}),
    ...(note.isAccented ? { isAccented: true } : {}),
    ...(note.hasPedal ? { hasPedal: true } : {}),
    value: valueOf(note.length),
    reading: readings[i]!,
    keys: note.keys.map(({ name }, k) => ({
      written: writtenAs(name, readings[i]!),
      accidental: accidentals[i]![k]!,
      finger: note.fingers[k] ?? null,
    })),
  }));
  return stretches.map((stretch, s): EngravedStaff => {
    const isWithin = ({ place }: { readonly place: number }): boolean =>
      place >= stretch.from && place < stretch.to;
    const here = placed.filter(isWithin);
    const notes = all.filter(isWithin);
    const next = all.find(({ place }) => place === stretches[s + 1]?.from)?.reading.clef ?? null;
    return {
      hand,
      notes,
      beams: beamsOf(here),
      triplets: tripletsOf(here),
      showsTriplet: s === 0,
      nextClef: next === notes.at(-1)?.reading.clef ? null : next,
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
  return stretches.map((stretch, i) => ({
    ...stretch,
    staves: staves.map((systems) => systems[i]!),
    joins: score.joins.filter((place) => place > stretch.from && place < stretch.to),
    isEnd: stretch.to >= Math.max(...lengths),
  }));
}

/** The place of a step of an item or a round, where every step lasts equally long. */
export const placeOfStep = (score: Score, step: number): number =>
  (step * PARTS_OF_BEAT) / score.grouping;
