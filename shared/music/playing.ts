/** What of a score sounds, and when: for playback and for the exports that are played. Places in parts of a beat. */
import type { Hands } from './deck';
import { groupBy, HANDS, type PlacedNote, placedNotes } from './engraving/placed';
import type { Hand } from './fingering/types';
import { PARTS_OF_BEAT, type Score } from './score';

/** One key that is held down. */
export interface Sound {
  readonly midi: number;
  readonly hand: Hand;
  readonly start: number;
  readonly end: number;
  readonly isAccented: boolean;
}

/** From a place to before another. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

export interface Moment {
  readonly place: number;
  /** What begins to sound here. */
  readonly sounds: readonly Sound[];
  readonly isBeat: boolean;
}

export const lengthOf = (score: Score): number =>
  Math.max(...HANDS.map((hand) => score[hand].reduce((sum, { length }) => sum + length, 0)));

/** The hands that have notes; 'together' for a score without any. */
export function handsIn({ right, left }: Score): Hands {
  if (right.length > 0 === left.length > 0) return 'together';
  return right.length > 0 ? 'right' : 'left';
}

/** Whether a hand is one of those that are chosen. */
export const includesHand = (hands: Hands, hand: Hand): boolean =>
  hands === 'together' || hands === hand;

/** Where a key that is down has to be up at the latest: where the hand next plays it. */
function nextOf(notes: readonly PlacedNote[], after: number, midi: number): number {
  const next = notes.slice(after + 1).find(({ keys }) => keys.some((key) => key.midi === midi));
  return next?.place ?? Infinity;
}

/**
 * The sounds of one hand in the order in which they begin. Each lasts until the next begins, or longer where they
 * overlap, but not into its own repetition. A key that is only touched makes none.
 */
export function soundsOf(score: Score, hand: Hand): readonly Sound[] {
  const notes = placedNotes(score, hand);
  return notes.flatMap((note, i) => {
    if (note.isSilent) return [];
    const held = note.place + note.length + (note.overlap ?? 0);
    return note.keys.map(({ midi }): Sound => ({
      midi,
      hand,
      start: note.place,
      end: Math.min(held, nextOf(notes, i, midi)),
      isAccented: note.isAccented ?? false,
    }));
  });
}

/**
 * The places of a stretch at which a note, a rest or a beat of the chosen hands begins, each once, in order. The first is
 * the beginning of the stretch. No sound lasts beyond its end, so that the stretch can be repeated.
 */
export function momentsOf(score: Score, hands: Hands, { from, to }: Stretch): readonly Moment[] {
  const chosen = HANDS.filter((hand) => includesHand(hands, hand));
  const firstBeat = Math.ceil(from / PARTS_OF_BEAT);
  const beats = Array.from(
    { length: Math.max(0, Math.ceil(to / PARTS_OF_BEAT) - firstBeat) },
    (_, i) => (firstBeat + i) * PARTS_OF_BEAT,
  );
  const notes = chosen.flatMap((hand) => placedNotes(score, hand));
  const sounds = groupBy(
    chosen.flatMap((hand) => soundsOf(score, hand)),
    ({ start }) => start,
  );
  const places = [...new Set([from, ...beats, ...notes.map(({ place }) => place)])];
  return places
    .filter((place) => place >= from && place < to)
    .toSorted((a, b) => a - b)
    .map((place) => ({
      place,
      sounds: (sounds.get(place) ?? []).map((sound) => ({
        ...sound,
        end: Math.min(sound.end, to),
      })),
      isBeat: place % PARTS_OF_BEAT === 0,
    }));
}
