/** A drill is written as strokes on a run: which of its notes sound, how long, and how they are played. */
import type { Hand } from '../../music/fingering/types';
import { PARTS_OF_BEAT, type ScoreNote } from '../../music/score';
import { changeTo } from '../../music/score-of';

export interface Stroke extends Pick<ScoreNote, 'length' | 'isSilent' | 'isAccented' | 'overlap'> {
  /** Indices of notes of the run, lowest first: none is a rest, several a chord. */
  readonly at: readonly number[];
}

export const BEAT = PARTS_OF_BEAT;
export const HALF = BEAT / 2;
export const QUARTER = BEAT / 4;

export const rest = (length: number): Stroke => ({ at: [], length });

/** The indices from one to another, both included, in either direction. */
export const indices = (from: number, to: number): readonly number[] =>
  Array.from({ length: Math.abs(to - from) + 1 }, (_, i) => from + i * Math.sign(to - from));

/** Single notes, each of the same length. */
export const strokesOn = (at: readonly number[], length: number): readonly Stroke[] =>
  at.map((index) => ({ at: [index], length }));

/** The last stroke lasts at least a beat, and until a beat ends, so that a repetition comes in time. */
export function endOnBeat(strokes: readonly Stroke[]): readonly Stroke[] {
  const before = strokes.slice(0, -1).reduce((sum, { length }) => sum + length, 0);
  const length = BEAT + ((BEAT - (before % BEAT)) % BEAT);
  return strokes.map((stroke, i) => (i === strokes.length - 1 ? { ...stroke, length } : stroke));
}

/** The change of position from one stroke to the next that sounds; between chords the hand is lifted. */
function changeBetween(
  hand: Hand,
  from: ScoreNote | undefined,
  to: ScoreNote,
): ScoreNote['change'] {
  if (from?.keys.length !== 1 || to.keys.length !== 1) return null;
  const [before, after] = [from.keys[0]!, to.keys[0]!];
  if (before.midi === after.midi) return null;
  return changeTo(
    hand,
    { key: before, finger: from.fingers[0]! },
    { key: after, finger: to.fingers[0]! },
  );
}

/** The strokes as notes of one hand of a score. */
export function written(
  hand: Hand,
  run: readonly ScoreNote[],
  strokes: readonly Stroke[],
): readonly ScoreNote[] {
  const notes: ScoreNote[] = [];
  let sounding: ScoreNote | undefined;
  for (const { at, ...rhythm } of strokes) {
    const played = at.map((index) => run[index]!);
    const note: ScoreNote = {
      ...rhythm,
      keys: played.map(({ keys }) => keys[0]!),
      fingers: played.map(({ fingers }) => fingers[0]!),
      change: null,
    };
    notes.push({ ...note, change: changeBetween(hand, sounding, note) });
    if (played.length > 0) sounding = note;
  }
  return notes;
}
