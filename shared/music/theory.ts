/**
 * The only module that imports tonal. Tonal answers unknown input with an empty string or object; here that becomes
 * a TheoryError, so that no empty note name travels on.
 */
import { Interval, Note } from 'tonal';

/** A note in scientific pitch notation ("Bb4", middle C = C4) or, without the digit, a pitch class ("Bb"). */
export type NoteName = string;

/** An interval in tonal's shorthand: number, then quality ("6m" = minor sixth). */
export type IntervalName = string;

export class TheoryError extends Error {
  override readonly name = 'TheoryError';
  constructor(
    readonly kind: 'unknown-note' | 'unknown-interval' | 'no-octave',
    readonly input: string,
  ) {
    super(`${kind.replace('-', ' ')}: "${input}"`);
  }
}

export interface NoteParts {
  readonly letter: string;
  /** -2 double flat, -1 flat, 0 natural, 1 sharp, 2 double sharp. */
  readonly alter: number;
  readonly octave: number | null;
}

export function notePartsOf(name: NoteName): NoteParts {
  const note = Note.get(name);
  if (note.empty) throw new TheoryError('unknown-note', name);
  return { letter: note.letter, alter: note.alt, octave: note.oct ?? null };
}

/** MIDI number, middle C = 60. */
export function midiOf(name: NoteName): number {
  const note = Note.get(name);
  if (note.empty) throw new TheoryError('unknown-note', name);
  if (note.midi === null) throw new TheoryError('no-octave', name);
  return note.midi;
}

/** The note a named interval above: `transpose("D4", "6m")` is "Bb4". */
export function transpose(name: NoteName, interval: IntervalName): NoteName {
  if (Note.get(name).empty) throw new TheoryError('unknown-note', name);
  const moved = Note.transpose(name, interval);
  if (moved === '') throw new TheoryError('unknown-interval', interval);
  return moved;
}

/** Size in semitones: `semitonesOf("6m")` is 8. */
export function semitonesOf(interval: IntervalName): number {
  const { empty, semitones } = Interval.get(interval);
  if (empty) throw new TheoryError('unknown-interval', interval);
  return semitones;
}
