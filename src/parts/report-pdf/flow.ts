/** Pieces under each other in a column, from page to page. */
import type { Piece } from './pieces';

/** In points from the upper left corner of a page. */
export interface Column {
  readonly x: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Cursor {
  /** From 0. */
  readonly page: number;
  readonly y: number;
}

/** Draws all pieces and returns where the next would begin. `open` makes a page the one that is drawn on. */
export function flow(
  column: Column,
  from: Cursor,
  pieces: readonly Piece[],
  open: (page: number) => void,
): Cursor {
  let { page, y } = from;
  pieces.forEach((piece, i) => {
    if (y > column.top && y + heightWithNext(pieces, i) > column.bottom) {
      page += 1;
      y = column.top;
    }
    // A gap separates; at the head of a page there is nothing to separate from.
    if (piece.isGap && y === column.top) return;
    open(page);
    piece.draw(column.x, y);
    y += piece.height;
  });
  return { page, y };
}

/** A heading never stands alone at the foot of a page, nor a gap before it. */
function heightWithNext(pieces: readonly Piece[], from: number): number {
  let height = 0;
  for (let i = from; i < pieces.length; i++) {
    height += pieces[i]!.height;
    if (!pieces[i]!.staysWithNext) break;
  }
  return height;
}

/** The one that is further down. */
export const later = (one: Cursor, other: Cursor): Cursor =>
  one.page > other.page || (one.page === other.page && one.y >= other.y) ? one : other;
