/** Where the keys of a piano lie, in units of a tenth of a white key's width. */
import { isBlackKey } from '../../../shared/music/sequence';

export const WHITE_WIDTH = 10;
export const BLACK_WIDTH = 5.8;

/** White keys below each pitch class within its octave; a black key counts the white key on its left. */
const WHITES_BELOW = [0, 1, 1, 2, 2, 3, 4, 4, 5, 5, 6, 6] as const;
/** Black keys do not stand in the middle between their neighbours: the outer ones of a group are moved outwards. */
const BLACK_SHIFT: Readonly<Record<number, number>> = { 1: -1, 3: 1, 6: -1.3, 8: 0, 10: 1.3 };

export interface KeyShape {
  readonly midi: number;
  readonly isBlack: boolean;
  /** Left edge. */
  readonly x: number;
  readonly width: number;
}

const whitesBelow = (midi: number): number => Math.floor(midi / 12) * 7 + WHITES_BELOW[midi % 12]!;

/** The white key at or below a key, and at or above it: where a drawing may end. */
export const whiteAtOrBelow = (midi: number): number => (isBlackKey(midi) ? midi - 1 : midi);
export const whiteAtOrAbove = (midi: number): number => (isBlackKey(midi) ? midi + 1 : midi);

/** All keys from the lowest to the highest, both included, white ones first so that black ones are drawn over them. */
export function keyShapes(lowest: number, highest: number): readonly KeyShape[] {
  const first = whiteAtOrBelow(lowest);
  const last = whiteAtOrAbove(highest);
  const origin = whitesBelow(first);
  const shapes = Array.from({ length: last - first + 1 }, (_, i): KeyShape => {
    const midi = first + i;
    const edge = (whitesBelow(midi) - origin) * WHITE_WIDTH;
    if (!isBlackKey(midi)) return { midi, isBlack: false, x: edge, width: WHITE_WIDTH };
    const x = edge - BLACK_WIDTH / 2 + BLACK_SHIFT[midi % 12]!;
    return { midi, isBlack: true, x, width: BLACK_WIDTH };
  });
  return shapes.toSorted((a, b) => Number(a.isBlack) - Number(b.isBlack) || a.midi - b.midi);
}

/** Width of the whole drawing. */
export const widthOf = (shapes: readonly KeyShape[]): number =>
  shapes.filter((shape) => !shape.isBlack).length * WHITE_WIDTH;
