/** The notes of a score with the places at which they begin. */
import type { Hand } from '../fingering/types';
import { PARTS_OF_BEAT, type Score, type ScoreNote } from '../score';

export interface PlacedNote extends ScoreNote {
  /** Parts of a beat from the beginning of the score. */
  readonly place: number;
}

export const HANDS: readonly Hand[] = ['right', 'left'];

export const isRest = ({ keys }: ScoreNote): boolean => keys.length === 0;

/** The beat of a place, from 0. */
export const beatOf = (place: number): number => Math.floor(place / PARTS_OF_BEAT);

/** Notes that follow each other, with their places. */
export function inPlace(notes: readonly ScoreNote[]): readonly PlacedNote[] {
  let place = 0;
  return notes.map((note) => {
    const at = { ...note, place };
    place += note.length;
    return at;
  });
}

/** The notes of a hand that begin at or after `from` and before `to`. */
export const placedNotes = (
  score: Score,
  hand: Hand,
  from = 0,
  to = Infinity,
): readonly PlacedNote[] => inPlace(score[hand]).filter(({ place }) => place >= from && place < to);

/** Places of the notes after which a hand goes the other way: the top of a run, its bottom. */
export function turnsOf(notes: readonly PlacedNote[]): readonly number[] {
  const line = notes
    .filter((note) => !isRest(note))
    .filter(({ keys }, i, all) => keys[0]!.midi !== all[i - 1]?.keys[0]!.midi);
  const heightAt = (i: number): number => line[i]!.keys[0]!.midi;
  return line
    .filter((_, i) => {
      if (i === 0 || i === line.length - 1) return false;
      return heightAt(i) > heightAt(i - 1) === heightAt(i) > heightAt(i + 1);
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
