import { expect, test } from 'vitest';
import { roomOf } from '../../../shared/listening/sound/room';
import type { Sound } from '../../../shared/listening/sound/spectrum';
import { tuningOf } from '../../../shared/listening/sound/tuning';
import { normal, seededRandom } from '../performer';

const RATE = 44_100;

/** A second of noise, then three of sines of one loudness after another, in semitones from A = 440 Hz. */
function sound(keys: readonly number[], { cents = 0, noise = 0.001, gain = 0.5 } = {}): Sound {
  const random = seededRandom(5);
  const samples = Float32Array.from({ length: 4 * RATE }, (_, i) => {
    const seconds = i / RATE - 1;
    const key = keys[Math.floor((Math.max(0, seconds) * keys.length) / 3)]!;
    const frequency = 440 * 2 ** (key / 12 + cents / 1200);
    const tone = seconds < 0 ? 0 : gain * Math.sin(2 * Math.PI * frequency * seconds);
    return Math.max(-1, Math.min(1, tone + noise * normal(random)));
  });
  return { samples, rate: RATE };
}

// From 430 to 446 Hz, the range of tuning forks of old and new pianos (common practice, no source).
test.each([430, 435, 440, 442, 446])(
  'a piano at %i Hz is found to within a tenth of a hertz',
  (hertz) => {
    const cents = 1200 * Math.log2(hertz / 440);
    const tuning = tuningOf(sound([-9, -5, -2, 3, 7], { cents }))!;
    expect(Math.abs(440 * 2 ** (tuning / 1200) - hertz)).toBeLessThan(0.1);
  },
);

test('noise, silence and tones that do not agree have no tuning', () => {
  expect(tuningOf(sound([0], { gain: 0 }))).toBeNull();
  expect(tuningOf({ samples: new Float32Array(RATE), rate: RATE })).toBeNull();
  expect(tuningOf(sound([0, 2.25, 4.5, 6.75]))).toBeNull();
});

test('a room has the decibels of the tones over its noise', () => {
  // A sine of size 0.5 is 0.354 in root mean square: 51 dB over 0.001, 31 dB over 0.01, 11 dB over 0.1.
  expect(roomOf(sound([0])).overNoise).toBeCloseTo(51, 0);
  expect(roomOf(sound([0], { noise: 0.01 })).overNoise).toBeCloseTo(31, 0);
  expect(roomOf(sound([0], { noise: 0.1 })).overNoise).toBeLessThan(15);
});

test('what is cut off at full size is clipped, and what only touches it is not', () => {
  expect(roomOf(sound([0], { gain: 2 })).isClipped).toBe(true);
  expect(roomOf(sound([0], { gain: 0.97, noise: 0 })).isClipped).toBe(false);
});
