/**
 * A take: what was heard of the playing, from a MIDI keyboard, a MIDI file or the microphone. The one form that the
 * analysis reads; whoever listens makes it.
 */
import type { TakeSource } from '../log/run-take';

export interface HeardNote {
  /** 21 (A0) to 108 (C8). */
  readonly midi: number;
  /** Seconds from the beginning of the take at which it began. */
  readonly on: number;
  /** When the key came up; null where that cannot be heard. */
  readonly off: number | null;
  /** MIDI velocity, 1 to 127; null where not known. */
  readonly loudness: number | null;
  /** 0 to 1: how sure it is that this key sounded. Below UNSURE it is never held against the player. */
  readonly confidence: number;
}

/** Confidence below which a note may stand for an expected one, but is no fault. */
export const UNSURE = 0.5;

/** The sustain pedal was down; `to` is null if it was at the end of the take. */
export interface PedalSpan {
  readonly from: number;
  readonly to: number | null;
}

export interface Take {
  readonly source: TakeSource;
  /** In the order in which they began. */
  readonly notes: readonly HeardNote[];
  /** Null where the pedal cannot be heard. */
  readonly pedal: readonly PedalSpan[] | null;
  /** Whether two notes of one moment have times of their own: from a microphone they have one for both. */
  readonly hasTimeOfEachHand: boolean;
}

/** The part of a take between two times, in seconds; the notes keep their times. */
export const sliceOf = (take: Take, from: number, to: number): Take => ({
  ...take,
  notes: take.notes.filter(({ on }) => on >= from && on <= to),
  pedal: take.pedal?.filter((span) => span.from <= to && (span.to ?? Infinity) >= from) ?? null,
});

/** Whether the pedal was down while notes began, other than for a moment; null where it cannot be heard. */
export function isPedalled({ pedal, notes }: Take): boolean | null {
  if (pedal === null) return null;
  return notes.some(({ on }) => pedal.some(({ from, to }) => from <= on && on < (to ?? Infinity)));
}
