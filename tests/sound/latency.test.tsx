import { expect, test } from 'vitest';
import { offsetOf, type Reading } from '../../src/sound/latency';

/** The clock began at 1000 ms by the page's; the device reports that its sound takes 40 ms. Readings come up to 10 ms late. */
const READINGS: readonly Reading[] = [7, 0, 3, 10, 1].map((late) => ({
  began: 1000 + late,
  believed: 1040,
}));

test('what the device reports of its output is not counted again', () => {
  expect(offsetOf(0.04, 0, READINGS)).toBeCloseTo(0, 6);
  expect(offsetOf(0.22, 0, READINGS)).toBeCloseTo(180, 6);
});

test('what the device tells of its microphone is taken off', () => {
  expect(offsetOf(0.22, 0.015, READINGS)).toBeCloseTo(165, 6);
});

test('sound that comes sooner than reported moves the beat the other way', () => {
  expect(offsetOf(0.03, 0, READINGS)).toBeCloseTo(-10, 6);
});

test('without a reading of the clocks there is no offset', () => {
  expect(() => offsetOf(0.1, 0, [])).toThrow(RangeError);
});
