import { expect, test } from 'vitest';
import type { RunTake } from '../../shared/log/run-take';
import { itemOf } from '../../shared/music/deck';
import { scoreOf } from '../../shared/music/score-of';
import { audibleOf, barsOf, highestOf, layoutOf, turnsOf } from '../../src/parts/take/take-layout';
import { OPTIONS } from '../formats/scores';

const takeWith = (...waits: (number | null)[]): RunTake => ({
  source: 'midi',
  certainty: 1,
  tempo: 240,
  drift: 0,
  notes: waits.length,
  right: waits.length,
  faults: [],
  breaks: [],
  lead: null,
  looseness: null,
  hands: {
    right: {
      waits,
      unevenness: null,
      overlap: null,
      thumbLate: null,
      loudness: null,
      thumbAccent: null,
    },
    left: null,
  },
});

test('bars of late notes stand on the line, bars of early ones hang from it, in one scale', () => {
  const layout = layoutOf(650, 13, highestOf(takeWith(null, 100, -20)));
  const [late, early] = barsOf([null, 100, -20], layout);
  expect(late!.top + late!.length).toBeCloseTo(layout.zero);
  expect(early!.top).toBeCloseTo(layout.zero);
  expect(late!.length / early!.length).toBeCloseTo(5);
  expect(late!.top).toBeGreaterThan(0);
  expect([layout.x(0), layout.x(12)]).toEqual([25, 625]);
});

test('a small unevenness is not drawn large, nor does a stop leave the picture', () => {
  expect(highestOf(takeWith(null, 3, -2))).toBe(50);
  expect(highestOf(takeWith(null, 3000, -2))).toBe(200);
  const layout = layoutOf(650, 13, 200);
  const [stop, rush] = barsOf([3000, -900], layout);
  expect(stop!.top).toBeGreaterThan(0);
  expect(rush!.top + rush!.length).toBeLessThan(layout.height);
});

test('the band of what is not heard is 6 ms, or 2.5 per cent of slower notes (Friberg & Sundberg 1995)', () => {
  const layout = layoutOf(650, 13, 100);
  expect(audibleOf(125, layout)).toBeCloseTo(layout.tall(6));
  expect(audibleOf(400, layout)).toBeCloseTo(layout.tall(10));
});

const notesOf = (id: 'd.major-53.right.2' | 'd.major-53.together.contrary') =>
  scoreOf([itemOf(id)], { ...OPTIONS, pedal: false }).right;

test('turns are where a hand goes back: once, or five times in the formula pattern', () => {
  expect(turnsOf(notesOf('d.major-53.right.2'))).toEqual([6]);
  // Up two, up two, down, up, down, up, down, down: the first and the last pair go on.
  expect(turnsOf(notesOf('d.major-53.together.contrary'))).toEqual([12, 18, 24, 30, 36]);
});
