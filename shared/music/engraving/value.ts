/** How a length is written: as which note, with a dot, in a triplet. */
import { PARTS_OF_BEAT } from '../score';

export interface NoteValue {
  /** The share of a whole note: 4 is a crotchet, 16 a sixteenth. */
  readonly share: 1 | 2 | 4 | 8 | 16 | 32;
  readonly isDotted: boolean;
  readonly isTriplet: boolean;
}

const SHARES = [1, 2, 4, 8, 16, 32] as const;
const WHOLE = 4 * PARTS_OF_BEAT;

const values = new Map<number, NoteValue>();
for (const [factor, form] of [
  [2 / 3, { isDotted: false, isTriplet: true }],
  [3 / 2, { isDotted: true, isTriplet: false }],
  // Last, as a dotted note of a triplet is as long as a plain one, and is written so.
  [1, { isDotted: false, isTriplet: false }],
] as const) {
  for (const share of SHARES) values.set((WHOLE / share) * factor, { share, ...form });
}

/** Throws a RangeError where no single note has the `length` (in parts of a beat). */
export function valueOf(length: number): NoteValue {
  const value = values.get(length);
  if (!value) throw new RangeError(`no note lasts ${length} of ${PARTS_OF_BEAT} parts of a beat`);
  return value;
}

/** Whether it hangs from a beam or has flags: shorter than a crotchet. */
export const isShort = ({ share }: NoteValue): boolean => share > 4;
