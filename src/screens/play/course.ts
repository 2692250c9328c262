/** The way through an entry: its arpeggios one after another, the last note of each being the first of the next. */
import { type Item, type ItemId, itemOf } from '../../../shared/music/deck';
import type { Score } from '../../../shared/music/score';
import { scoreOf, type ScoreOptions } from '../../../shared/music/score-of';

export interface Part {
  readonly item: Item;
  /** A step is a note of each hand that plays. */
  readonly score: Score;
  /** Position of its first note, in steps from the first note of the course. */
  readonly start: number;
  /** From its first note to its last. */
  readonly intervals: number;
}

export interface Course {
  readonly parts: readonly Part[];
  /** All of it as one piece of music, in which the shared notes come once; made when it is first asked for. */
  readonly whole: () => Score;
  /** Position of the very last note. */
  readonly length: number;
}

export type CourseOptions = Omit<ScoreOptions, 'title' | 'pedal'> &
  Partial<Pick<ScoreOptions, 'pedal'>>;

export function courseOf(items: readonly ItemId[], options: CourseOptions): Course {
  const written: ScoreOptions = { pedal: false, ...options, title: '' };
  const parts: Part[] = [];
  let start = 0;
  for (const id of items) {
    const item = itemOf(id);
    const score = scoreOf([item], written);
    const intervals = Math.max(score.right.length, score.left.length) - 1;
    parts.push({ item, score, start, intervals });
    start += intervals;
  }
  let whole: Score | null = null;
  return { parts, length: start, whole: () => (whole ??= scoreOf(items.map(itemOf), written)) };
}

/** Index of the arpeggio that a position belongs to; a shared note belongs to the one that it begins. */
export function partAt(course: Course, position: number): number {
  const after = course.parts.findIndex((part) => part.start > position);
  return after === -1 ? course.parts.length - 1 : Math.max(0, after - 1);
}
