/** Where a hand lies at one moment of a score, and where it goes next. */
import type { Finger } from './fingering/types';
import type { ScoreNote } from './score';

export interface FingeredKeyNow {
  /** MIDI number. */
  readonly midi: number;
  readonly finger: Finger;
}

export interface Placement {
  /** The keys that the hand covers without changing its position, lowest first. */
  readonly keys: readonly FingeredKeyNow[];
  /** The first key of the next position; null in the last one. */
  readonly next: FingeredKeyNow | null;
}

const fingeredKeyOf = ({ keys, fingers }: ScoreNote): FingeredKeyNow | null => {
  const [key, finger] = [keys[0], fingers[0]];
  return key && finger ? { midi: key.midi, finger } : null;
};

/** The placement of a hand at the note of an index; null where it rests or has no fingers. */
export function placementAt(notes: readonly ScoreNote[], index: number): Placement | null {
  if (!notes[index] || fingeredKeyOf(notes[index]) === null) return null;
  let first = index;
  while (first > 0 && notes[first]!.change === null) first -= 1;
  const after = notes.findIndex((note, i) => i > index && note.change !== null);
  const covered = notes.slice(first, after < 0 ? undefined : after).flatMap((note) => {
    const fingered = fingeredKeyOf(note);
    return fingered ? [fingered] : [];
  });
  const byKey = new Map(covered.map((one) => [one.midi, one]));
  return {
    keys: [...byKey.values()].toSorted((a, b) => a.midi - b.midi),
    next: after < 0 ? null : fingeredKeyOf(notes[after]!),
  };
}
