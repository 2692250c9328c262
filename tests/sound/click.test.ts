import { describe, expect, it } from 'vitest';
import { clickSamples } from '../../src/sound/click';

const RATES = [22_050, 44_100, 48_000, 96_000];
const CLICKS = RATES.flatMap((rate) => [
  { rate, isAccent: true },
  { rate, isAccent: false },
]);

const peakOf = (samples: Float32Array): number => Math.max(...samples.map(Math.abs));

/** Hz, from the zero crossings of the first 15 ms: enough to tell one wood block from the other. */
function pitchOf(samples: Float32Array, rate: number): number {
  const head = samples.slice(0, Math.round(0.015 * rate));
  const crossings = head.filter((value, i) => i > 0 && value > 0 !== head[i - 1]! > 0).length;
  return crossings / 2 / 0.015;
}

describe.each(CLICKS)('a click at $rate Hz, accent: $isAccent', ({ rate, isAccent }) => {
  const samples = clickSamples(rate, isAccent);

  it('begins with its first sample, without a snap', () => {
    expect(Math.abs(samples[0]!)).toBeGreaterThan(1e-5);
    expect(Math.abs(samples[0]!)).toBeLessThan(0.05 * peakOf(samples));
  });

  it('has died away before it ends', () => {
    const tail = samples.slice(Math.round(0.06 * rate));
    expect(peakOf(tail)).toBeLessThan(0.01);
    expect(Math.abs(samples.at(-1)!)).toBeLessThan(1e-6);
  });

  it('is short, and does not clip', () => {
    expect(samples.length / rate).toBeLessThan(0.1);
    expect(peakOf(samples)).toBeLessThanOrEqual(1);
    expect(peakOf(samples)).toBeGreaterThan(0.3);
  });

  it('sounds between 2 and 4 kHz', () => {
    expect(pitchOf(samples, rate)).toBeGreaterThan(2000);
    expect(pitchOf(samples, rate)).toBeLessThan(4000);
  });
});

describe('the accent', () => {
  it('is higher and louder than the other clicks', () => {
    const [accent, normal] = [clickSamples(48_000, true), clickSamples(48_000, false)];
    expect(peakOf(accent)).toBeGreaterThan(1.3 * peakOf(normal));
    expect(pitchOf(accent, 48_000)).toBeGreaterThan(1.2 * pitchOf(normal, 48_000));
  });
});
