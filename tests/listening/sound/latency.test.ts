import { describe, expect, it, test } from 'vitest';
import { CLICK_TIMES, latencyOf } from '../../../shared/listening/sound/latency';
import type { Sound } from '../../../shared/listening/sound/spectrum';
import { clickSamples } from '../../../src/sound/click';
import { pianoSamples } from '../../../src/sound/piano-tone';
import { fc } from '../../learning/property';
import { normal, seededRandom } from '../performer';
import { PLACES, spoiled } from './spoil';

/** Seconds after which the first click is sent. */
const LEAD = 0.5;
const TIMES = CLICK_TIMES.map((time) => LEAD + time);
const LENGTH = 7;

interface Recorded {
  readonly rate: number;
  readonly delay: number | ((click: number) => number);
  /** Size of the clicks in the recording. */
  readonly level?: number;
  readonly without?: readonly number[];
}

/** The app's own clicks, as much later as said; a delay is not a whole number of samples, so the click is moved by parts. */
function recorded({ rate, delay, level = 0.1, without = [] }: Recorded): Sound {
  const samples = new Float32Array(LENGTH * rate);
  const click = clickSamples(rate, true);
  for (const [i, time] of TIMES.entries()) {
    if (without.includes(i)) continue;
    const start = (time + (typeof delay === 'number' ? delay : delay(i))) * rate;
    const first = Math.ceil(start);
    const part = first - start;
    for (let k = 0; k + 1 < click.length; k++) {
      samples[first + k]! += level * ((1 - part) * click[k]! + part * click[k + 1]!);
    }
  }
  return { samples, rate };
}

function added({ samples, rate }: Sound, other: Float32Array, at: number): Sound {
  const sum = samples.slice();
  const from = Math.round(at * rate);
  for (let i = 0; i < other.length && from + i < sum.length; i++) sum[from + i]! += other[i]!;
  return { samples: sum, rate };
}

const heard = (sound: Sound) => latencyOf(sound, clickSamples(sound.rate, true), TIMES);

/** Milliseconds from the truth. */
function errorOf(sound: Sound, delay: number): number {
  const found = heard(sound);
  return found.kind === 'measured' ? 1000 * Math.abs(found.delay - delay) : Infinity;
}

const CASES = [
  { rate: 44_100, delay: 0.005 },
  { rate: 48_000, delay: 0.04 },
  { rate: 44_100, delay: 0.18 },
  { rate: 48_000, delay: 0.4 },
];

describe.each(CASES)('clicks that come $delay s late, at $rate Hz,', ({ rate, delay }) => {
  const sound = recorded({ rate, delay });

  it('are found to within 2 ms in a dry room, a live one and by a telephone’s microphone', () => {
    for (const place of Object.values(PLACES)) {
      expect(errorOf(spoiled(sound, place, seededRandom(3)), delay)).toBeLessThan(2);
    }
  });

  it('are found in pink noise as loud as they are', () => {
    const place = { ...PLACES.room, overNoise: 0 };
    expect(errorOf(spoiled(sound, place, seededRandom(5)), delay)).toBeLessThan(2);
  });

  it('are found though two of them are missing and a piano sounds ten times as loud between them', () => {
    const some = recorded({ rate, delay, without: [2, 6] });
    const played = added(some, pianoSamples(84, rate), 2.1);
    expect(errorOf(added(played, pianoSamples(48, rate), 3.7), delay)).toBeLessThan(2);
  });
});

test.each([0.7, 0.75, 0.85])(
  'clicks that come %f s late are not taken for those that follow',
  (delay) => {
    expect(heard(recorded({ rate: 48_000, delay })).kind).not.toBe('measured');
  },
);

describe('no click is heard', () => {
  it('in silence, in a recording that was cut off, and with most clicks missing', () => {
    const silence = new Float32Array(LENGTH * 48_000);
    expect(heard({ samples: silence, rate: 48_000 })).toEqual({ kind: 'not-heard' });
    expect(heard({ samples: silence.subarray(0, 9), rate: 48_000 })).toEqual({ kind: 'not-heard' });
    const few = recorded({ rate: 48_000, delay: 0.1, without: [0, 2, 3, 5, 7] });
    expect(heard(few)).toEqual({ kind: 'not-heard' });
  });

  it('in white or pink noise', () => {
    const random = seededRandom(11);
    const white = Float32Array.from({ length: LENGTH * 44_100 }, () => 0.2 * normal(random));
    expect(heard({ samples: white, rate: 44_100 })).toEqual({ kind: 'not-heard' });
    const faint = recorded({ rate: 44_100, delay: 0.1, level: 1e-4 });
    const pink = spoiled(faint, { ...PLACES.room, overNoise: -40 }, random);
    expect(heard(pink)).toEqual({ kind: 'not-heard' });
  });

  it('in a piano that is played', () => {
    const none: Sound = { samples: new Float32Array(LENGTH * 44_100), rate: 44_100 };
    const played = [60, 64, 67, 72, 76, 79, 84, 88].reduce(
      (sound, key, i) => added(sound, pianoSamples(key, 44_100), 0.6 + 0.7 * i),
      none,
    );
    expect(heard(played).kind).not.toBe('measured');
  });
});

test('clicks that come now sooner, now later are unsteady, not measured', () => {
  const sound = recorded({ rate: 48_000, delay: (click) => 0.05 + 0.04 * click });
  expect(heard(sound).kind).toBe('unsteady');
});

test('clicks that are too near together to be told apart are an error', () => {
  const sound = recorded({ rate: 48_000, delay: 0 });
  expect(() => latencyOf(sound, clickSamples(48_000, true), [1, 1.4])).toThrow(RangeError);
});

test('any delay is found in any noise that is not louder than the clicks', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.005, max: 0.4, noNaN: true }),
      fc.double({ min: 0, max: 40, noNaN: true }),
      fc.integer({ min: 1, max: 1e6 }),
      (delay, overNoise, seed) => {
        const place = { ...PLACES.phone, overNoise };
        expect(
          errorOf(spoiled(recorded({ rate: 44_100, delay }), place, seededRandom(seed)), delay),
        ).toBeLessThan(2);
      },
    ),
    { numRuns: 6 },
  );
});
