/**
 * What is engraved, played and exported alike: two staves of notes, one a hand. Made from items (score-of.ts) and from
 * drills; the only form of music that the staff, the playback and the exports know.
 */
import type { Finger } from './fingering/types';
import type { Key } from './sequence';
import type { Grouping, Tempo } from './tempo';

/** Parts of a beat (a crotchet) in which lengths are counted: sixteenths are 6, notes of a triplet 8. */
export const PARTS_OF_BEAT = 24;

/** One note, chord or rest of one hand. */
export interface ScoreNote {
  /** Sounding together, lowest first; none is a rest. */
  readonly keys: readonly Key[];
  /** One for each key; null where none is known. */
  readonly fingers: readonly (Finger | null)[];
  /** In parts of a beat. */
  readonly length: number;
  /** The hand has changed its position on the way to this note. */
  readonly change: 'thumb under' | 'hand over' | null;
  /** Only touched, not sounded. */
  readonly isSilent?: boolean;
  readonly isAccented?: boolean;
  /** Held until after the next has begun, for this many parts of a beat. */
  readonly overlap?: number;
  /** The pedal goes down after this note has begun, and up again when the next has begun, to join the two; see pedal.ts. */
  readonly hasPedal?: boolean;
}

export interface KeySignature {
  /** Sharps, 1 to 7, or flats, -1 to -7; 0 is C major or A minor. */
  readonly fifths: number;
  readonly mode: 'major' | 'minor';
}

export interface Score {
  /** In words, for exports and for assistive technology: "D major, hands together, four octaves". */
  readonly title: string;
  readonly tempo: Tempo;
  readonly grouping: Grouping;
  /** Both hands have the same length; a hand that rests throughout has no notes. */
  readonly right: readonly ScoreNote[];
  readonly left: readonly ScoreNote[];
  /** Places, in parts of a beat from the beginning, at which one arpeggio ends and the next begins. */
  readonly joins: readonly number[];
  /** The key at the beginning and from each join on, null where there is none; without, none is printed at all. */
  readonly keySignatures?: readonly (KeySignature | null)[];
}

/** MIDI numbers of all keys of one hand, each once, in the order in which they first come. */
export const keysOfHand = (notes: readonly ScoreNote[]): readonly number[] => [
  ...new Set(notes.flatMap(({ keys }) => keys.map(({ midi }) => midi))),
];
