/** What should be heard: the notes of a score moment by moment, as far as they sound. */
import type { Finger, Hand } from '../music/fingering/types';
import { PARTS_OF_BEAT, type Score, type ScoreNote } from '../music/score';
import type { Key } from '../music/sequence';

export interface ExpectedNote {
  readonly hand: Hand;
  readonly key: Key;
  readonly finger: Finger | null;
  readonly change: ScoreNote['change'];
  /** Where this hand comes from; of its first note, where it goes. */
  readonly way: 'up' | 'down';
}

/** What sounds at one moment: a note of each hand that plays. */
export type ExpectedStep = readonly ExpectedNote[];

/** Steps of one arpeggio, from its first to its last. The last is also the first of the next. */
export interface ExpectedPart {
  readonly from: number;
  readonly to: number;
}

export interface Expected {
  readonly steps: readonly ExpectedStep[];
  readonly parts: readonly ExpectedPart[];
  /** Notes to a beat. */
  readonly grouping: number;
}

const HANDS = ['right', 'left'] as const;

function notesOf(hand: Hand, notes: readonly ScoreNote[]): readonly ExpectedNote[] {
  return notes.map(({ keys, fingers, change }, i) => {
    const key = keys[0]!;
    const [from, to] = i === 0 ? [key, notes[1]?.keys[0] ?? key] : [notes[i - 1]!.keys[0]!, key];
    const way = to.midi >= from.midi ? 'up' : 'down';
    return { hand, key, finger: fingers[0] ?? null, change, way };
  });
}

/** Of the score of an item or a round (scoreOf): single notes of one length, hand against hand. */
export function expectedOf(score: Score): Expected {
  const hands = HANDS.map((hand) => notesOf(hand, score[hand]));
  const length = Math.max(...hands.map((notes) => notes.length));
  const steps = Array.from({ length }, (_, i) => hands.flatMap((notes) => notes[i] ?? []));
  const starts = [0, ...score.joins.map((at) => (at * score.grouping) / PARTS_OF_BEAT)];
  const parts = starts.map((from, i) => ({ from, to: starts[i + 1] ?? length - 1 }));
  return { steps, parts, grouping: score.grouping };
}
