/** Which notes hang from one beam: those of a beat that are shorter than it, as far as no rest parts them. */
import { PARTS_OF_BEAT } from '../score';
import type { PlacedNote } from './placed';
import { isShort, valueOf } from './value';

const beatOf = ({ place }: PlacedNote): number => Math.floor(place / PARTS_OF_BEAT);

const isBeamed = ({ keys, length }: PlacedNote): boolean =>
  keys.length > 0 && isShort(valueOf(length));

/** Runs of notes with the same answer that follow each other, as indices. */
function runsOf(
  notes: readonly PlacedNote[],
  isIn: (note: PlacedNote) => boolean,
): readonly (readonly number[])[] {
  const runs: number[][] = [];
  notes.forEach((note, i) => {
    if (!isIn(note)) return;
    const before = notes[i - 1];
    const goesOn = before && isIn(before) && beatOf(before) === beatOf(note);
    if (goesOn) runs.at(-1)!.push(i);
    else runs.push([i]);
  });
  return runs;
}

/** Groups of two or more indices into `notes`. */
export const beamsOf = (notes: readonly PlacedNote[]): readonly (readonly number[])[] =>
  runsOf(notes, isBeamed).filter((run) => run.length > 1);

/** Triplets, beat by beat, as indices into `notes`. */
export const tripletsOf = (notes: readonly PlacedNote[]): readonly (readonly number[])[] =>
  runsOf(notes, ({ length }) => valueOf(length).isTriplet);
