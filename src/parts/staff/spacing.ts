/** Where the notes of a system stand from left to right. */

/** What begins at one moment, in units of the drawing. */
export interface Spot {
  /** Needed to the left of the notehead's left edge, for accidentals, a clef or a line. */
  readonly left: number;
  /** Needed to the right of it, for the head. */
  readonly right: number;
  /** Parts of a beat until the next spot, or until the end. */
  readonly length: number;
}

/** Twice as long a note gets this much more room (common practice in engraving, no source). */
const FOR_TWICE = 1.4;
const CLOSEST = 4;
const HALVINGS = 30;

/**
 * The x of the notehead's left edge at each spot: equal lengths get equal room, save where accidentals need more. The
 * first begins at 0 (after what it needs to its left), and the room after the last ends at `room`.
 */
export function spread(spots: readonly Spot[], room: number): readonly number[] {
  const shortest = Math.min(...spots.map(({ length }) => length));
  const weights = spots.map(({ length }) => FOR_TWICE ** Math.log2(length / shortest));
  const needs = spots.map(({ right }, i) => right + CLOSEST + (spots[i + 1]?.left ?? 0));
  const stepsFor = (share: number) => needs.map((need, i) => Math.max(need, share * weights[i]!));
  const first = spots[0]!.left;
  let [low, high] = [0, room];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    const total = first + stepsFor(middle).reduce((sum, step) => sum + step, 0);
    if (total > room) high = middle;
    else low = middle;
  }
  let x = first;
  return stepsFor(low).map((step) => {
    const here = x;
    x += step;
    return here;
  });
}
