/** The notes of a score with the places at which they begin. */
import type { Hand } from '../fingering/types';
import type { Score, ScoreNote } from '../score';

export interface PlacedNote extends ScoreNote {
  /** Parts of a beat from the beginning of the score. */
  readonly place: number;
}

export const HANDS: readonly Hand[] = ['right', 'left'];

/** The notes of a hand that begin at or after `from` and before `to`. */
export function placedNotes(
  score: Score,
  hand: Hand,
  from = 0,
  to = Infinity,
): readonly PlacedNote[] {
  let place = 0;
  const placed = score[hand].map((note) => {
    const at = { ...note, place };
    place += note.length;
    return at;
  });
  return placed.filter((note) => note.place >= from && note.place < to);
}

/** Places of the notes after which a hand goes the other way: the top of a run, its bottom. */
export function turnsOf(notes: readonly PlacedNote[]): readonly number[] {
  const sounding = notes.filter(({ keys }) => keys.length > 0);
  const heights = sounding.map(({ keys }) => keys[0]!.midi);
  return sounding
    .filter((_, i) => {
      const [before, here, after] = [heights[i - 1], heights[i]!, heights[i + 1]];
      if (before === undefined || after === undefined) return false;
      return Math.sign(here - before) === -Math.sign(after - here) && here !== before;
    })
    .map(({ place }) => place);
}

/** Notes with the same key together, in the order in which they come. */
export function groupBy<Note>(
  notes: readonly Note[],
  keyOf: (note: Note) => number,
): ReadonlyMap<number, readonly Note[]> {
  const groups = new Map<number, Note[]>();
  for (const note of notes) {
    const group = groups.get(keyOf(note));
    if (group) group.push(note);
    else groups.set(keyOf(note), [note]);
  }
  return groups;
}
