/** What lights up of a run by the microphone while it goes on, and whether its place is known: rendered, in simulated rooms. */
import { beforeAll, describe, expect, test } from 'vitest';
import { expectedOf } from '../../../shared/listening/expected';
import { type LiveEar, liveEar } from '../../../shared/listening/sound/live-ear';
import type { Sound } from '../../../shared/listening/sound/spectrum';
import { roundItems } from '../../../shared/music/deck';
import { scoreOf } from '../../../shared/music/score-of';
import { OPTIONS } from '../../formats/scores';
import { normal, perform, seededRandom } from '../performer';
import { rendered } from './fluidsynth';
import { type LiveOutcome, liveOutcomeOf, liveSummaryOf } from './live-heard';
import { type LiveGroup, liveSounds, liveTrialOf } from './live-trials';
import { PLACES, spoiled } from './spoil';

/** Seeds on which nothing was fitted, of short runs in all places. */
const SEEDS = {
  'one hand': [101, 102, 105, 106, 108],
  'two octaves': [102, 104, 105, 106],
  'four octaves': [102, 105],
  contrary: [105],
} as const satisfies Readonly<Record<LiveGroup, readonly number[]>>;
const GROUPS = Object.keys(SEEDS) as LiveGroup[];

const outcomes = new Map<LiveGroup, readonly LiveOutcome[]>();
beforeAll(() => {
  for (const group of GROUPS) {
    const trials = SEEDS[group].map((seed) => liveTrialOf(seed, group));
    const sounds = liveSounds(trials);
    outcomes.set(
      group,
      trials.map((trial, i) => liveOutcomeOf(trial, sounds[i]!)),
    );
  }
}, 300_000);

describe.each(GROUPS)('%s', (group) => {
  const summary = () => liveSummaryOf(outcomes.get(group)!);

  test('has its right notes lit, and hardly any other', () => {
    expect(summary().lit).toBeGreaterThanOrEqual(0.97);
    expect(summary().falsely).toBeLessThanOrEqual(0.01);
  });

  test('has a light within a third of a second, mostly', () => {
    expect(summary().most).toBeLessThan(0.34);
  });

  test('is followed to the end of every arpeggio, and never ahead of it', () => {
    const { ends, endsRight, early } = summary();
    expect(ends).toBeGreaterThan(1);
    expect([endsRight, early]).toEqual([ends, 0]);
  });
});

const RATE = 44_100;
const CHORDS = roundItems('e', 'right.2').slice(0, 2);
const expected = expectedOf(scoreOf(CHORDS, { ...OPTIONS, pedal: false }));
const opened = (): LiveEar => liveEar(expected, { rate: RATE, tempo: 240, tuning: null });

function play(ear: LiveEar, { samples }: Sound): ReturnType<LiveEar['heard']> {
  for (let from = 0; from < samples.length; from += 2048) ear.add(samples.slice(from, from + 2048));
  return ear.heard();
}
const inOrder = (steps: ReadonlySet<number>): readonly number[] =>
  [...steps].toSorted((a, b) => a - b);
const STEPS = expected.steps.map((_, step) => step);

describe('a run of one hand', () => {
  let clean: Sound;
  let faulty: Sound;
  beforeAll(() => {
    const takes = [
      {},
      { wrong: [{ step: 4, hand: 'right', by: 1 }], missed: [{ step: 9, hand: 'right' }] },
    ] as const;
    const sounds = rendered(
      takes.map((planted, i) =>
        perform(expected, { random: seededRandom(i), tempo: 240, spread: 0.006, planted }),
      ),
    );
    [clean, faulty] = sounds.map((sound, i) => spoiled(sound, PLACES.room, seededRandom(i))) as [
      Sound,
      Sound,
    ];
  }, 60_000);

  test('lights up what was right and nothing else', () => {
    const { step, lit } = play(opened(), faulty);
    expect(step).toBe(24);
    expect(inOrder(lit.right)).toEqual(STEPS.filter((one) => one !== 4 && one !== 9));
    expect(lit.left.size).toBe(0);
  });

  test('goes dark again from where the player was turned back to, and on from there', () => {
    const ear = opened();
    play(ear, clean);
    ear.turnTo(12);
    expect(ear.heard().step).toBe(12);
    expect(inOrder(ear.heard().lit.right)).toEqual(STEPS.slice(0, 12));
    // The whole is played again, but it is the second arpeggio that is waited for.
    const second = clean.samples.subarray(Math.round(RATE * (0.6 + 0.5 + 12 * 0.25 - 0.1)));
    expect(play(ear, { samples: second, rate: RATE }).step).toBe(24);
    expect(inOrder(ear.heard().lit.right)).toEqual(STEPS);
  });

  test('that is as soft as the noise of the room lights nothing up, and is followed all the same', () => {
    const level = Math.sqrt(
      clean.samples.reduce((sum, one) => sum + one ** 2, 0) / clean.samples.length,
    );
    const random = seededRandom(5);
    const samples = clean.samples.map((one) => one + level * 10 ** (-8 / 20) * normal(random));
    const { step, lit, spoilt } = play(opened(), { samples, rate: RATE });
    expect([step, spoilt, lit.right.size]).toEqual([24, 'noise', 0]);
  });

  test('that is too loud for the microphone lights nothing up', () => {
    const samples = clean.samples.map((one) => Math.max(-1, Math.min(1, 40 * one)));
    const { lit, spoilt } = play(opened(), { samples, rate: RATE });
    expect([spoilt, lit.right.size]).toEqual(['loud', 0]);
  });
});

test.each([
  ['silence', 0],
  ['noise', 0.1],
])('in %s nothing lights up, and nobody begins', (_, size) => {
  const random = seededRandom(2);
  const samples = Float32Array.from({ length: 8 * RATE }, () => size * (random() - 0.5));
  const { step, lit } = play(opened(), { samples, rate: RATE });
  expect([step, lit.right.size]).toEqual([-1, 0]);
});
