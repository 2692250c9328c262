/**
 * What a run keeps of the take that was heard of it: measures only, no notes and no sound. Small enough for the log,
 * enough to draw the take's picture and to say in words where it broke. Made in shared/listening/judge.ts.
 */
import type { Hand } from '../music/fingering/types';
import type { Tempo } from '../music/tempo';

export const TAKE_SOURCES = ['midi', 'file', 'microphone'] as const;
export type TakeSource = (typeof TAKE_SOURCES)[number];

/** Most notes of an item in one hand: a seventh in contrary motion has 65. */
export const MOST_STEPS = 100;
/** What is kept of more faults than these says nothing new. */
export const MOST_FAULTS = 24;

/** A note that was not as expected. */
export interface TakeFault {
  readonly kind: 'wrong' | 'missed' | 'extra';
  readonly hand: Hand;
  /** Place of the expected note, 0 = the first; of an extra note, of the one that comes next. */
  readonly step: number;
  /** MIDI number of what was played instead or besides; null where nothing was. */
  readonly midi: number | null;
}

/** One hand. Every measure is null where it is not known. */
export interface HandTake {
  /**
   * For every note, the milliseconds by which it came later (negative: earlier) after the one before than at a steady
   * tempo; null for the first, after a break, and where the note is not known.
   */
  readonly waits: readonly (number | null)[];
  /** Standard deviation of the times from note to note in ms, without hesitations and steady drift. */
  readonly unevenness: number | null;
  /** Median time in ms by which a key is held into the next; negative is a gap. */
  readonly overlap: number | null;
  /** Mean time in ms by which the thumb comes late. */
  readonly thumbLate: number | null;
  /** Standard deviation of the loudness, and by how much the thumb is louder than the other fingers: MIDI velocity. */
  readonly loudness: number | null;
  readonly thumbAccent: number | null;
}

export interface RunTake {
  readonly source: TakeSource;
  /** 0 to 1: how far the measures can be trusted. */
  readonly certainty: number;
  /** By least squares, hesitations left out; null with too few notes. */
  readonly tempo: Tempo | null;
  /** Change of tempo from the first note to the last in per cent: 5 is faster by a twentieth. */
  readonly drift: number | null;
  /** Notes expected, and of those the notes that were played as expected. */
  readonly notes: number;
  readonly right: number;
  readonly faults: readonly TakeFault[];
  /** Places at which the player broke off: to begin again from somewhere, or for good. */
  readonly breaks: readonly number[];
  /** Median time in ms by which the left hand comes after the right one, and its standard deviation. */
  readonly lead: number | null;
  readonly looseness: number | null;
  readonly hands: { readonly right: HandTake | null; readonly left: HandTake | null };
}
