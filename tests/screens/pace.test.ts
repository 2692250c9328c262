import { expect, test } from 'vitest';
import { roundItems } from '../../shared/music/deck';
import { roundIntervals } from '../../shared/music/sequence';
import { courseOf, partAt } from '../../src/screens/play/course';
import {
  afterCountIn,
  type Anchor,
  countAt,
  onNearestBeat,
  positionAt,
} from '../../src/screens/play/pace';

const START: Anchor = { beat: 0, position: 0, isCounted: true };
/** 60 beats a minute. */
const PACE = { msPerBeat: 1000, grouping: 4 } as const;
const WITHOUT_FINGERS = { tempo: 240, grouping: 4, fingeringOf: () => null } as const;
const round = roundItems('d', 'right.2').map((item) => item.id);

test('arpeggios of a round share their last and first note', () => {
  const course = courseOf(round, WITHOUT_FINGERS);
  expect(course.parts.map((part) => part.start)).toEqual([
    0, 12, 24, 36, 48, 60, 72, 88, 104, 120, 136,
  ]);
  expect(course.length).toBe(roundIntervals(roundItems('d', 'right.2')));
  const firsts = course.parts.map((part) => part.score.right[0]!.keys[0]!.midi);
  const lasts = course.parts.map((part) => part.score.right.at(-1)!.keys[0]!.midi);
  expect(firsts.slice(1)).toEqual(lasts.slice(0, -1));
});

test('a shared note belongs to the arpeggio that it begins', () => {
  const course = courseOf(round, WITHOUT_FINGERS);
  expect([0, 11, 12, 13, 71, 72, 152, 999].map((at) => partAt(course, at))).toEqual([
    0, 0, 1, 1, 5, 6, 10, 10,
  ]);
});

test('four beats are counted in before the first note', () => {
  expect([-4, -3, -2, -1, 0, 1].map((index) => countAt(START, index))).toEqual([
    1,
    2,
    3,
    4,
    null,
    null,
  ]);
  expect(positionAt(START, { index: -1, at: 0 }, 900, PACE)).toBe(0);
});

test('notes are told from the last beat, and never run ahead of the next one', () => {
  const beat = { index: 2, at: 5000 };
  expect([5000, 5249, 5250, 5999, 9000].map((now) => positionAt(START, beat, now, PACE))).toEqual([
    8, 8, 9, 11, 11,
  ]);
  expect(positionAt(START, beat, 4990, PACE)).toBe(8);
});

test('going on by hand falls on the nearest beat', () => {
  const beat = { index: 5, at: 5000 };
  const late = onNearestBeat(12, beat, 5300, PACE);
  expect(positionAt(late, beat, 5300, PACE)).toBe(13);
  const early = onNearestBeat(12, beat, 5700, PACE);
  expect(positionAt(early, beat, 5700, PACE)).toBe(12);
  expect(positionAt(early, { index: 6, at: 6000 }, 6000, PACE)).toBe(12);
  expect(positionAt(early, { index: 7, at: 7000 }, 7000, PACE)).toBe(16);
  expect(countAt(early, 5)).toBeNull();
});

test('going back counts in again', () => {
  const again = afterCountIn(12, { index: 5, at: 5000 });
  expect([6, 7, 8, 9, 10].map((index) => countAt(again, index))).toEqual([1, 2, 3, 4, null]);
  expect(positionAt(again, { index: 8, at: 8000 }, 8500, PACE)).toBe(12);
  expect(positionAt(again, { index: 11, at: 11_000 }, 11_000, PACE)).toBe(16);
});
