/** What a fingering is asked for, and the form in which it is kept. */

/** 1 = thumb … 5 = fifth finger, in both hands. */
export type Finger = 1 | 2 | 3 | 4 | 5;
export type Hand = 'right' | 'left';
/** The low or the high end of a run. */
export type End = 'low' | 'high';

/** A chord to be played as an arpeggio by one hand. */
export interface Question {
  /** MIDI numbers of two or more rising notes within an octave (less than 12 semitones from first to last). */
  readonly keys: readonly number[];
  readonly hand: Hand;
  /** 1 to 8. */
  readonly octaves: number;
  /** Widest comfortable reach from thumb to fifth finger, in semitones; AVERAGE_SPAN when absent. */
  readonly span?: number;
  /** The end from which the run begins: low when absent. The left hand of plain contrary motion begins high. */
  readonly start?: End;
}

/**
 * A fingering for any number of octaves and any number of turns. Inside the run every octave has the pattern; at the
 * ends some notes take another finger.
 */
export interface FingerPlan {
  /** From the lowest note of a run upwards, at least one. */
  readonly low: readonly Finger[];
  /** One finger for each note of the chord, bottom note first. */
  readonly pattern: readonly Finger[];
  /** From the highest note of a run downwards, at least one. */
  readonly high: readonly Finger[];
}

/** Bad input from a program, not from a person: the message carries the value. */
export class FingeringError extends Error {
  override readonly name = 'FingeringError';
}
