/** The stretches of a score that are worth hearing again and again: in whole beats, so that the beat goes on. */
import { HANDS, type PlacedNote, placedNotes, turnsOf } from './engraving/placed';
import type { Hand } from './fingering/types';
import { lengthOf, type Stretch } from './playing';
import { PARTS_OF_BEAT, type Score } from './score';

export type NamedStretch = Stretch &
  (
    | { readonly kind: 'all' }
    /** To the top and from there on, where both hands turn together and once. */
    | { readonly kind: 'up' | 'down' }
    /** One arpeggio of several; the first is number 1. */
    | { readonly kind: 'arpeggio'; readonly number: number }
    /** Two beats around a position change. */
    | { readonly kind: 'change'; readonly hand: Hand; readonly note: PlacedNote }
  );

/** The beat in which a place lies, counted from 1. */
export const beatNumber = (place: number): number => Math.floor(place / PARTS_OF_BEAT) + 1;

const beatBefore = (place: number): number => Math.floor(place / PARTS_OF_BEAT) * PARTS_OF_BEAT;
const beatAfter = (place: number): number => Math.ceil(place / PARTS_OF_BEAT) * PARTS_OF_BEAT;

function halvesOf(score: Score, end: number): readonly NamedStretch[] {
  const turns = HANDS.map((hand) => placedNotes(score, hand))
    .filter((notes) => notes.length > 0)
    .map((notes) => ({ notes, places: turnsOf(notes) }));
  const top = turns[0]?.places[0];
  const isOneTop = turns.every(({ places }) => places.length === 1 && places[0] === top);
  if (top === undefined || !isOneTop) return [];
  const isUp = turns.every(({ notes }) => {
    const [first, highest] = [notes[0]!, notes.find(({ place }) => place === top)!];
    return first.keys.length > 0 && first.keys[0]!.midi < highest.keys[0]!.midi;
  });
  if (!isUp) return [];
  return [
    // With the beat that the top begins, to hear how the hand turns.
    { kind: 'up', from: 0, to: Math.min(end, beatAfter(top + 1)) },
    { kind: 'down', from: beatBefore(top), to: end },
  ];
}

function arpeggiosOf({ joins }: Score, end: number): readonly NamedStretch[] {
  if (joins.length === 0) return [];
  const starts = [0, ...joins];
  return starts.map((start, i) => ({
    kind: 'arpeggio',
    number: i + 1,
    from: beatBefore(start),
    to: Math.min(end, beatAfter((starts[i + 1] ?? end - 1) + 1)),
  }));
}

function changesOf(score: Score, end: number): readonly NamedStretch[] {
  return HANDS.flatMap((hand) =>
    placedNotes(score, hand)
      .filter(({ change }) => change !== null)
      .map((note): NamedStretch => {
        const middle = Math.round(note.place / PARTS_OF_BEAT) * PARTS_OF_BEAT;
        const from = Math.max(0, Math.min(middle - PARTS_OF_BEAT, end - 2 * PARTS_OF_BEAT));
        return { kind: 'change', hand, note, from, to: Math.min(end, from + 2 * PARTS_OF_BEAT) };
      }),
  );
}

/** In the order in which they are offered: all of it, its parts, and the position changes of each hand. */
export function stretchesOf(score: Score): readonly NamedStretch[] {
  const end = lengthOf(score);
  return [
    { kind: 'all', from: 0, to: end },
    ...halvesOf(score, end),
    ...arpeggiosOf(score, end),
    ...changesOf(score, end),
  ];
}
