/** What is heard of a score, rendered offline in a real browser by the app's own code. */
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { type ItemId, itemOf } from '../../shared/music/deck';
import { lengthOf, soundsOf } from '../../shared/music/playing';
import { PARTS_OF_BEAT, type Score } from '../../shared/music/score';
import { scoreOf } from '../../shared/music/score-of';
import { note, OPTIONS, score } from '../formats/scores';
import {
  centsBetween,
  frequencyNear,
  levelAt,
  onsetNear,
  peakOf,
  type Sound,
} from '../sound/measure';
import type { PassageRendering } from '../sound/playback-harness';
import { browseHarness } from './browse';

const RATE = 48_000;
/** No whole number of samples, so that rounding must show if there is any. */
const START = 0.123_456_7;

const harness = browseHarness('tests/sound/playback-harness.ts');
let page: Page;

beforeEach(async () => {
  ({ page } = await harness.newDevice());
});

type Way = Partial<PassageRendering['playing']> & {
  readonly seconds: number;
  readonly countInBeats?: number;
  readonly volume?: number;
};

function taskOf(made: Score, { seconds, countInBeats = 0, volume = 0.7, ...way }: Way) {
  const playing = {
    score: made,
    hands: 'together',
    stretch: { from: 0, to: lengthOf(made) },
    repeats: false,
    beatsPerMinute: 60,
    piano: true,
    beat: false,
    ...way,
  } as const;
  return { playing, countInBeats, start: START, sampleRate: RATE, seconds, volume };
}

async function heard(made: Score, way: Way): Promise<Sound> {
  const task = taskOf(made, way);
  const base64 = await page.evaluate((one) => window.playbackHarness.render(one), task);
  const { buffer } = Uint8Array.from(Buffer.from(base64, 'base64'));
  return { samples: new Float32Array(buffer), sampleRate: RATE };
}

/** The level of the C that was struck first, halfway into the next note, as a share of that before it. */
const inNextNote = (sound: Sound): number => {
  const [before, after] = [0.9, 1.4].map((time) => levelAt(sound, pitchOf(72), START + time, 0.1));
  return after! / before!;
};

/** ISO 16:1975: the A above middle C has 440 Hz; the others in equal temperament. */
const pitchOf = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);

const itemScore = (id: ItemId): Score => scoreOf([itemOf(id)], OPTIONS);

describe('a score', () => {
  it('has every pitch within 2 cents', async () => {
    const names = ['C1', 'F1', 'C2', 'Bb2', 'C3', 'C4', 'A4', 'F#5', 'C6', 'E7', 'C8'];
    const made = score(names.map((name) => note(name, PARTS_OF_BEAT)));
    const sound = await heard(made, { seconds: names.length + 1 });
    const cents = made.right.map(({ keys }, i) => {
      const pitch = pitchOf(keys[0]!.midi);
      return centsBetween(frequencyNear(sound, pitch, START + i + 0.1), pitch);
    });
    // The tolerance of the standard, 0.5 Hz, is 2 cents at the A of 440 Hz.
    expect(cents.map(Math.abs).filter((off) => off > 2)).toEqual([]);
  });

  it.each([40, 150])('has every note at its time at %i beats a minute', async (beatsPerMinute) => {
    const made = itemScore('d.major-53.right.2');
    const beat = 60 / beatsPerMinute;
    const seconds = START + (lengthOf(made) / PARTS_OF_BEAT) * beat + 0.5;
    const sound = await heard(made, { beatsPerMinute, seconds });
    const milliseconds = soundsOf(made, 'right').map(({ midi, start }) => {
      const time = START + (start / PARTS_OF_BEAT) * beat;
      return (onsetNear(sound, pitchOf(midi), time) - time) * 1000;
    });
    expect(milliseconds).toHaveLength(13);
    expect(milliseconds.filter((off) => Math.abs(off) > 4)).toEqual([]);
    expect(levelAt(sound, pitchOf(62), seconds - 0.05, 0.1)).toBeLessThan(0.001);
  });

  it('sounds from its very first sample on, and is silent before', async () => {
    const { samples } = await heard(score([note('C5', 24)]), { seconds: 0.5 });
    const first = samples.findIndex((value) => value !== 0);
    expect(first - START * RATE).toBeGreaterThan(-0.001);
    expect(first - START * RATE).toBeLessThan(2);
  });

  it('holds a key into the next note where it overlaps, and damps it where it does not', async () => {
    const [held, damped] = await Promise.all(
      [12, 0].map((overlap) =>
        heard(score([note('C5', 24, { overlap }), note('D#5', 24)]), { seconds: 2.2 }),
      ),
    );
    expect(inNextNote(held!)).toBeGreaterThan(0.4);
    expect(inNextNote(damped!)).toBeLessThan(0.01);
  });

  it('is silent in rests and where a key is only touched', async () => {
    const made = score([note('C5', 12), note('', 36), note('E5', 24, { isSilent: true })]);
    const sound = await heard(made, { seconds: 3 });
    expect(levelAt(sound, pitchOf(72), START + 0.3)).toBeGreaterThan(0.01);
    expect(peakOf({ ...sound, samples: sound.samples.slice(1.2 * RATE) })).toBe(0);
  });

  it('is louder where it is accented', async () => {
    const made = score([note('C5', 24), note('C5', 24, { isAccented: true })]);
    const sound = await heard(made, { seconds: 2 });
    const levels = [0.2, 1.2].map((time) => levelAt(sound, pitchOf(72), START + time, 0.1));
    expect(levels[1]! / levels[0]!).toBeCloseTo(1.5, 1);
  });

  it('lets one hand be heard alone', async () => {
    const made = score([note('G#5', 24)], [note('C4', 24)]);
    const levelsOf = async (hands: 'right' | 'left' | 'together') => {
      const sound = await heard(made, { hands, seconds: 1 });
      return [80, 60].map((midi) => levelAt(sound, pitchOf(midi), START + 0.3, 0.2) > 0.005);
    };
    expect(await levelsOf('right')).toEqual([true, false]);
    expect(await levelsOf('left')).toEqual([false, true]);
    expect(await levelsOf('together')).toEqual([true, true]);
  });

  it('repeats a stretch without a gap or drift', async () => {
    const made = score(['C5', 'D#5', 'F#5', 'A5', 'C6', 'G#5'].map((name) => note(name, 12)));
    const beatsPerMinute = 137;
    const stretch = { from: 24, to: 48 };
    const round = 60 / beatsPerMinute;
    const sound = await heard(made, { beatsPerMinute, stretch, repeats: true, seconds: 20 });
    for (const times of [0, 1, 17, 44]) {
      const first = START + times * round;
      const offs = [first, first + round / 2].map(
        (time, i) => onsetNear(sound, pitchOf(i === 0 ? 78 : 81), time) - time,
      );
      expect(offs.filter((off) => Math.abs(off) > 0.004)).toEqual([]);
    }
    expect(levelAt(sound, pitchOf(72), 10, 1)).toBeLessThan(0.001);
  });

  it('clicks on the first sample of every beat, after a count-in, over a hundred repetitions', async () => {
    const beatsPerMinute = 137;
    const countInBeats = 4;
    const made = score([note('C5', 72)]);
    const task = taskOf(made, {
      beatsPerMinute,
      countInBeats,
      piano: false,
      beat: true,
      repeats: true,
      seconds: START + (300 * 60) / beatsPerMinute,
    });
    const start = START + (countInBeats * 60) / beatsPerMinute;
    const clicks = await page.evaluate((one) => window.playbackHarness.clicks(one), {
      ...task,
      start,
    });
    expect(clicks).toHaveLength(300);
    const samplesOff = clicks.map(
      ({ sample }, n) => sample - (START + (n * 60) / beatsPerMinute) * RATE,
    );
    expect(Math.min(...samplesOff)).toBeGreaterThan(-0.001);
    expect(Math.max(...samplesOff)).toBeLessThan(1.001);
    // The beginning of each repetition is accented, and nothing of the count-in.
    const accents = clicks.flatMap(({ peak }, n) => (peak > 0.36 ? [n] : []));
    expect(accents).toEqual(Array.from({ length: 99 }, (_, i) => 4 + 3 * i).filter((n) => n < 300));
  });

  it('does not clip, however much sounds at once', async () => {
    const loud = { isAccented: true, overlap: 6 };
    const chords = ['C3 E3 G3 C4', 'D3 F3 A3 D4', 'E3 G3 B3 E4', 'F3 A3 C4 F4'];
    const hand = chords.map((names) => note(names, 6, loud));
    const sound = await heard(score(hand, hand), { beat: true, volume: 1, seconds: 1.5 });
    expect(peakOf(sound)).toBeGreaterThan(0.75);
    expect(peakOf(sound)).toBeLessThanOrEqual(1);
  });

  it('is left as it is by the limiter at the usual loudness', async () => {
    const made = itemScore('d.dominant-7.together.4');
    const sound = await heard(made, { beatsPerMinute: 120, beat: true, seconds: 10 });
    expect(peakOf(sound)).toBeGreaterThan(0.2);
    expect(peakOf(sound)).toBeLessThan(0.75);
  });
});
