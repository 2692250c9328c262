/** The shapes of notes and rests, and how long each lasts. */
import { PARTS_OF_BEAT } from '../score';

export interface NoteValue {
  /** In parts of a beat. */
  readonly length: number;
  /** The share of a whole note: 4 is a crotchet, 16 a sixteenth. */
  readonly share: 1 | 2 | 4 | 8 | 16 | 32;
  readonly isDotted: boolean;
  /** Three in the time of two. */
  readonly isTriplet: boolean;
}

const SHARES = [1, 2, 4, 8, 16, 32] as const;
export const WHOLE = 4 * PARTS_OF_BEAT;

/** Longest first; what is not a whole number of parts is none. */
const valuesOf = (isTriplet: boolean, longest: number): readonly NoteValue[] =>
  SHARES.flatMap((share) =>
    [true, false].map((isDotted): NoteValue => {
      const length = (WHOLE * (isDotted ? 3 : 2) * (isTriplet ? 2 : 3)) / (6 * share);
      return { length, share, isDotted, isTriplet };
    }),
  )
    .filter(({ length }) => length <= longest && Number.isInteger(length))
    .toSorted((a, b) => b.length - a.length);

export const PLAIN_VALUES = valuesOf(false, WHOLE);
/** A triplet lies within one beat. */
export const TRIPLET_VALUES = valuesOf(true, PARTS_OF_BEAT - 1);

/** Beams, or flags of a note on its own: none from the crotchet upwards. */
export const beamCount = ({ share }: NoteValue): number => Math.max(0, Math.log2(share) - 2);
