import { describe, expect, it } from 'vitest';
import { limited } from '../../src/sound/limiter';
import { frequencyOf, pianoSamples } from '../../src/sound/piano-tone';
import { centsBetween, frequencyNear, levelAt } from './measure';

const RATE = 44_100;
const KEYS = [21, 36, 60, 81, 108];

it.each([
  // ISO 16:1975 for the A; the rest by equal temperament.
  [69, 440],
  [21, 27.5],
  [36, 65.4064],
  [60, 261.6256],
  [84, 1046.5023],
  [108, 4186.009],
])('key %i has %f Hz', (midi, frequency) => {
  expect(frequencyOf(midi)).toBeCloseTo(frequency, 3);
});

describe.each(KEYS)('the tone of key %i', (midi) => {
  const samples = pianoSamples(midi, RATE);
  const sound = { samples, sampleRate: RATE };
  const peak = (from: number, to: number): number =>
    samples
      .slice(from * RATE, to * RATE)
      .reduce((most, value) => Math.max(most, Math.abs(value)), 0);

  it('is in tune at every sample rate', () => {
    const cents = centsBetween(frequencyNear(sound, frequencyOf(midi), 0.1), frequencyOf(midi));
    expect(Math.abs(cents)).toBeLessThan(1);
  });

  it('begins at once without a snap, dies away, and ends in silence', () => {
    expect(Math.abs(samples[0]!)).toBeLessThan(0.01);
    expect(peak(0, 0.02)).toBeGreaterThan(0.3);
    expect(peak(0, 3)).toBeLessThan(1.1);
    expect(peak(0.7, 0.8)).toBeLessThan(0.8 * peak(0, 0.1));
    expect(Math.abs(samples.at(-1)!)).toBe(0);
    expect(samples.length / RATE).toBeLessThanOrEqual(3);
  });
});

it('has higher partials that die sooner, as those of a string', () => {
  const sound = { samples: pianoSamples(60, RATE), sampleRate: RATE };
  const kept = (frequency: number) =>
    levelAt(sound, frequency, 1, 0.2) / levelAt(sound, frequency, 0.2, 0.2);
  // The fourth partial of a stiff string is a little above four times the first.
  expect(kept(4 * frequencyOf(60) * 1.002)).toBeLessThan(0.7 * kept(frequencyOf(60)));
});

it('is the same each time', () => {
  expect(pianoSamples(60, RATE)).toEqual(pianoSamples(60, RATE));
});

describe('the limiter', () => {
  it('leaves alone what is not loud, and keeps all the rest within full scale, in order', () => {
    for (const value of [-0.75, -0.3, 0, 0.01, 0.75]) expect(limited(value)).toBe(value);
    const loud = [0.76, 0.9, 1.2, 1.6].map(limited);
    expect(loud.toSorted((a, b) => a - b)).toEqual(loud);
    expect(new Set(loud).size).toBe(4);
    expect(limited(100)).toBeLessThanOrEqual(1);
    expect(limited(-100)).toBeGreaterThanOrEqual(-1);
  });
});
