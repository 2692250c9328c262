/** Where the discs of a small map lie, in units of a tenth of their distance. */

export const PITCH = 10;
/** Room for the names of the starting notes. */
const LABELS = 14;
/** Radius of a full disc. */
const FULL = 4.6;
/** Between the groups of chords: root position, first, second inversion, dominant, diminished seventh. */
const GAP = 3;
const GAPS_BEFORE = [0, 0, 1, 1, 2, 2, 3, 3, 3, 3, 4] as const;

export const xOf = (column: number): number =>
  LABELS + PITCH * (column + 0.5) + GAP * GAPS_BEFORE[column]!;
export const yOf = (row: number): number => PITCH * (row + 0.5);

/** The area of the disc is the chance. */
export const discRadius = (chance: number): number => FULL * Math.sqrt(chance);
