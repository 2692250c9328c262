/** Which notes hang from one beam, and which form a triplet. */
import type { Piece } from './pieces';
import { beatOf, isRest } from './placed';
import { beamCount } from './value';

/** Indices of pieces that follow each other within a beat. */
export type Group = readonly number[];

const isBeamed = (piece: Piece): boolean => !isRest(piece) && beamCount(piece.value) > 0;

/** Runs of pieces of one beat with the same answer, as indices. */
function runsOf(pieces: readonly Piece[], isIn: (piece: Piece) => boolean): readonly Group[] {
  const runs: number[][] = [];
  pieces.forEach((piece, i) => {
    if (!isIn(piece)) return;
    const before = pieces[i - 1];
    const goesOn = before && isIn(before) && beatOf(before.place) === beatOf(piece.place);
    if (goesOn) runs.at(-1)!.push(i);
    else runs.push([i]);
  });
  return runs;
}

/** Groups of two or more: the short notes of a beat, as far as no rest parts them. */
export const beamsOf = (pieces: readonly Piece[]): readonly Group[] =>
  runsOf(pieces, isBeamed).filter((run) => run.length > 1);

export interface Triplet {
  readonly group: Group;
  /** Whether a bracket has to say which notes belong to it, as no beam does. */
  readonly hasBracket: boolean;
  /** Whether it has its 3. Where one beamed triplet follows another like it, only the first has. */
  readonly hasFigure: boolean;
}

export function tripletsOf(pieces: readonly Piece[]): readonly Triplet[] {
  const beamed = new Set(beamsOf(pieces).map((group) => group.join(' ')));
  const shapeOf = (group: Group): string => group.map((i) => pieces[i]!.length).join(' ');
  const groups = runsOf(pieces, ({ value }) => value.isTriplet);
  return groups.map((group, i) => {
    const hasBracket = !beamed.has(group.join(' '));
    const before = groups[i - 1];
    const goesOn = before?.at(-1) === group[0]! - 1 && shapeOf(before) === shapeOf(group);
    return { group, hasBracket, hasFigure: hasBracket || !goesOn };
  });
}
