/** A file in front of the browser's microphone, and a piano that is rendered into it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { expectedOf } from '../../shared/listening/expected';
import type { Sound } from '../../shared/listening/sound/spectrum';
import { type ItemId, itemOf } from '../../shared/music/deck';
import { scoreOf } from '../../shared/music/score-of';
import { OPTIONS } from '../formats/scores';
import { perform, type Planted, seededRandom } from '../listening/performer';
import { rendered } from '../listening/sound/fluidsynth';
import { PLACES, spoiled } from '../listening/sound/spoil';
import { writeWave } from './wave';

export interface HeardFile {
  /** What the browser is started with. */
  readonly flags: readonly string[];
  /** Puts a sound there. It is heard from its beginning whenever the microphone is opened. Returns its milliseconds. */
  play(sound: Sound): number;
}

export function heardFile(often: 'once' | 'again and again'): HeardFile {
  const folder = mkdtempSync(join(tmpdir(), 'arpeggiary-microphone-'));
  const file = join(folder, 'heard.wav');
  afterAll(() => rmSync(folder, { recursive: true }));
  const capture = often === 'once' ? `${file}%noloop` : file;
  return {
    flags: ['--use-fake-device-for-media-stream', `--use-file-for-fake-audio-capture=${capture}`],
    play: (sound) => {
      writeWave(file, sound);
      return (1000 * sound.samples.length) / sound.rate;
    },
  };
}

/** A playing at 80 in a room, after so many seconds. */
export function played(items: readonly ItemId[], planted: Planted = {}, after = 0): Sound {
  const expected = expectedOf(scoreOf(items.map(itemOf), { ...OPTIONS, pedal: false }));
  const random = seededRandom(4);
  const take = perform(expected, { random, tempo: 320, spread: 0.004, planted });
  const { samples, rate } = rendered([take])[0]!;
  const late = new Float32Array(samples.length + after * rate);
  late.set(samples, after * rate);
  return spoiled({ samples: late, rate }, PLACES.room, random);
}

export const louder = (factor: number, { samples, rate }: Sound): Sound => ({
  samples: samples.map((value) => factor * value),
  rate,
});
