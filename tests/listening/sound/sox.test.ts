/** The ear against tools that know nothing of it: a recorded grand and a sound font, rooms, noise and tunings made by sox. */
import { describe, expect, test } from 'vitest';
import { expectedOf } from '../../../shared/listening/expected';
import { type Finding, findingsOf } from '../../../shared/listening/findings';
import { judge } from '../../../shared/listening/judge';
import { hear } from '../../../shared/listening/sound/hear';
import { spectraOf } from '../../../shared/listening/sound/spectrum';
import { tuningOf } from '../../../shared/listening/sound/tuning';
import { type ItemId, itemOf } from '../../../shared/music/deck';
import { scoreOf } from '../../../shared/music/score-of';
import { OPTIONS } from '../../formats/scores';
import { perform, type Planted, seededRandom } from '../performer';
import { rendered } from './fluidsynth';
import { onGrand } from './grand';
import { soxSpectrum, throughSox, withSoxNoise } from './sox';

test('a spectrum has the sizes that sox finds', () => {
  const size = 4096;
  const sines = [
    { place: 20, loudness: 0.3 },
    { place: 83, loudness: 0.1 },
    { place: 400, loudness: 0.05 },
  ];
  const samples = Float32Array.from({ length: size }, (_, i) =>
    sines.reduce(
      (sum, { place, loudness }) => sum + loudness * Math.sin((2 * Math.PI * place * i) / size),
      0,
    ),
  );
  const sound = { samples, rate: 44_100 };
  const spectra = spectraOf(sound, size);
  const sizes = spectra.at(0);
  const powers = [...soxSpectrum(sound)];
  expect(powers).toHaveLength(size / 2);
  for (const { place } of sines) {
    const [hertz, power] = powers[place]!;
    expect(place * spectra.spacing).toBeCloseTo(hertz, 2);
    // sox takes the piece as it is; under a Hann window half of a sine is left at its place.
    expect(sizes[place]).toBeCloseTo(Math.sqrt(power) / size, 5);
  }
});

interface Case {
  readonly item: ItemId;
  readonly play: typeof rendered;
  /** What sox does, and decibels of the piano over its pink noise. */
  readonly effects: string;
  readonly overNoise: number;
  readonly planted: Planted;
  readonly told: readonly string[];
}

const told = (finding: Finding): string =>
  'step' in finding ? `${finding.kind} ${finding.step}` : finding.kind;

const WAIT = { step: 9, seconds: 0.15 };
const CASES: readonly Case[] = [
  {
    item: 'c.major-53.right.2',
    play: onGrand,
    effects: 'speed -40c reverb 35',
    overNoise: 30,
    planted: { waits: [WAIT], wrong: [{ step: 4, hand: 'right', by: 1 }] },
    told: ['hesitation 9', 'wrong 4'],
  },
  {
    item: 'd.dominant-42.left.4',
    play: rendered,
    effects: 'speed 23c reverb 35 highpass 150 lowpass 8000',
    overNoise: 25,
    planted: { missed: [{ step: 20, hand: 'left' }] },
    told: ['missed 20'],
  },
  {
    item: 'f.minor-53.together.2',
    play: onGrand,
    effects: 'speed -20c reverb 35',
    overNoise: 30,
    planted: { waits: [WAIT], wrong: [{ step: 5, hand: 'left', by: -1 }] },
    told: ['hesitation 9', 'wrong 5'],
  },
  {
    item: 'c.diminished-7.together.contrary',
    play: onGrand,
    effects: 'reverb 35',
    overNoise: 30,
    planted: {},
    told: [],
  },
];

describe.each(CASES)('$item after $effects of sox', (one) => {
  const score = scoreOf([itemOf(one.item)], { ...OPTIONS, pedal: false });
  const expected = expectedOf(score);
  const [tempo, spread] = [280, 0.004];

  test('has its faults told and no others, its tempo and its tuning', () => {
    const playing = { random: seededRandom(8), tempo, spread, planted: one.planted };
    const [piano] = one.play([perform(expected, playing)]);
    const sound = withSoxNoise(throughSox(piano!, one.effects), one.overNoise);
    const hearing = hear(sound, expected, { tempo: 240, tuning: null, isFiltered: false });
    expect(hearing.isFollowed).toBe(true);
    const [measured] = judge(expected, hearing.take);
    expect(findingsOf(measured!, score).map(told)).toEqual(one.told);
    const cents = Number(/speed (-?\d+)c/.exec(one.effects)?.[1] ?? 0);
    expect(Math.abs(measured!.tempo! / (tempo * 2 ** (cents / 1200)) - 1)).toBeLessThan(0.01);
    expect(Math.abs(tuningOf(sound)! - cents)).toBeLessThan(5);
  });
});
