/** What a fingering means for the hand: its placements on the keys, and the changes from one to the next. */
import { HAND_RULES } from './ergonomic';
import type { Line } from './line';
import { sumOf } from './rules';
import { spanOf, widening } from './spans';
import type { Finger, Hand } from './types';

export interface FingeredNote {
  /** Place in the run, 0 = the lowest note. */
  readonly index: number;
  /** MIDI number. */
  readonly key: number;
  readonly black: boolean;
  readonly finger: Finger;
}

/** Two neighbouring notes of one position that lie clearly too far apart for their fingers to be comfortable. */
export interface Stretch {
  readonly lower: FingeredNote;
  readonly upper: FingeredNote;
  /** Semitones from the one to the other. */
  readonly size: number;
  /** Semitones beyond what this hand reaches in comfort between the two fingers. */
  readonly excess: number;
}

/** The notes that one placement of the hand covers, lowest first. */
export interface Position {
  readonly notes: readonly FingeredNote[];
  readonly stretches: readonly Stretch[];
}

/** Where the thumb passes under, or the hand over, from one position to the next. */
export interface PositionChange {
  readonly way: 'up' | 'down';
  readonly kind: 'thumb under' | 'hand over';
  /** In the order of playing. */
  readonly from: FingeredNote;
  readonly to: FingeredNote;
  /** Semitones between the two. */
  readonly size: number;
  /** Points for this hand, of the pass itself and of what comes just before and after it. */
  readonly difficulty: number;
  readonly level: Level;
}

export type Level = 'easy' | 'medium' | 'hard';
/** Points from which a change is medium, and from which hard: about a third each of the changes of the 264 runs (P). */
const MEDIUM = 25;
const HARD = 30;

/** Semitones beyond comfort from which a stretch is worth a caution (P); below it, it passes in a moment. */
const TOO_WIDE = 1;

function stretchesOf(notes: readonly FingeredNote[], span: number): readonly Stretch[] {
  return notes.slice(1).flatMap((upper, i) => {
    const lower = notes[i]!;
    const size = upper.key - lower.key;
    const near = Math.min(lower.finger, upper.finger) as Finger;
    const far = Math.max(lower.finger, upper.finger) as Finger;
    const excess = size - spanOf(near, far).maxComfortable / widening(span);
    return excess > TOO_WIDE ? [{ lower, upper, size, excess }] : [];
  });
}

/** Going up within a position, the right hand's fingers rise and the left hand's fall; otherwise it is left. */
export const leavesPosition = (
  hand: Hand,
  lower: { readonly finger: Finger },
  upper: { readonly finger: Finger },
): boolean => (hand === 'right' ? upper.finger <= lower.finger : upper.finger >= lower.finger);

/** The positions of a run, lowest first. `span` is the hand's. */
export function positionsOf(
  notes: readonly FingeredNote[],
  hand: Hand,
  span: number,
): readonly Position[] {
  const groups: FingeredNote[][] = [];
  for (const note of notes) {
    const below = notes[note.index - 1];
    if (!below || leavesPosition(hand, below, note)) groups.push([note]);
    else groups.at(-1)!.push(note);
  }
  return groups.map((group) => ({ notes: group, stretches: stretchesOf(group, span) }));
}

/** Points around the pass from note `i - 1` of a line to note `i`, wider for a small hand. */
function difficultyOf(line: Line, fingers: readonly Finger[], i: number, span: number): number {
  const at = (k: number): number => {
    const finger = fingers[k];
    if (!finger) return 0;
    return sumOf(HAND_RULES, line, k, [fingers[k - 2] ?? null, fingers[k - 1] ?? null, finger]);
  };
  return (at(i) + at(i + 1)) * widening(span);
}

/** The changes of a run to its far end and back, in the order of playing. */
export function changesOf(
  notes: readonly FingeredNote[],
  hand: Hand,
  line: Line,
  span: number,
): readonly PositionChange[] {
  const last = notes.length - 1;
  const onLine = hand === 'right' ? notes : notes.toReversed();
  const fingers = onLine.map(({ finger }) => finger);
  const ups = notes.slice(1).flatMap((upper, k): readonly PositionChange[] => {
    const lower = notes[k]!;
    if (!leavesPosition(hand, lower, upper)) return [];
    const difficulty = difficultyOf(line, fingers, hand === 'right' ? k + 1 : last - k, span);
    const level = difficulty < MEDIUM ? 'easy' : difficulty < HARD ? 'medium' : 'hard';
    const size = upper.key - lower.key;
    const kind = hand === 'right' ? 'thumb under' : 'hand over';
    return [{ way: 'up', kind, from: lower, to: upper, size, difficulty, level }];
  });
  const downs = ups.toReversed().map(({ from, to, size, difficulty, level }): PositionChange => ({
    way: 'down',
    kind: hand === 'right' ? 'hand over' : 'thumb under',
    from: to,
    to: from,
    size,
    difficulty,
    level,
  }));
  const isLowStart = (line.start === 'low') === (hand === 'right');
  return isLowStart ? [...ups, ...downs] : [...downs, ...ups];
}
