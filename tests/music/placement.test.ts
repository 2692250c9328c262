import { expect, test } from 'vitest';
import { itemOf, type ItemId } from '../../shared/music/deck';
import { placementAt } from '../../shared/music/placement';
import { scoreOf } from '../../shared/music/score-of';
import type { Finger } from '../../shared/music/fingering/types';

/** C E G in the usual 123 1235, common practice; over two octaves from middle C and back. */
const score = (id: ItemId, withFingers = true) =>
  scoreOf([itemOf(id)], {
    title: '',
    tempo: 240,
    grouping: 4,
    pedal: false,
    fingeringOf: () => (withFingers ? { low: [1], pattern: [1, 2, 3], high: [5 as Finger] } : null),
  });
const at = (index: number) => placementAt(score('c.major-53.right.2').right, index);

test('on the way up the first position has three notes, and the thumb goes on', () => {
  expect(at(1)).toEqual({
    keys: [
      { midi: 60, finger: 1 },
      { midi: 64, finger: 2 },
      { midi: 67, finger: 3 },
    ],
    next: { midi: 72, finger: 1 },
  });
});

test('at the turn the hand stays where it is, and goes on over the thumb', () => {
  const upper = [72, 76, 79, 84].map((midi, i) => ({ midi, finger: [1, 2, 3, 5][i] }));
  for (const index of [3, 6, 9]) {
    expect(at(index)).toEqual({ keys: upper, next: { midi: 67, finger: 3 } });
  }
});

test('the last position leads nowhere', () => {
  expect(at(12)!.next).toBeNull();
  expect(at(12)!.keys.map(({ midi }) => midi)).toEqual([60, 64, 67]);
});

test('nothing is shown of a hand that rests or has no fingers', () => {
  expect(placementAt(score('c.major-53.right.2').left, 0)).toBeNull();
  expect(placementAt(score('c.major-53.right.2', false).right, 0)).toBeNull();
  expect(at(99)).toBeNull();
});
