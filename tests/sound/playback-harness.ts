/** The page that tests/browser/playback.test.ts opens in a real browser: it renders passages of scores offline. */
import { createLimiter } from '../../src/sound/limiter';
import { passageOf, type Playing, turnsOf } from '../../src/sound/passage';
import { createVoices } from '../../src/sound/playback';
import { walkRow } from '../../src/sound/walk';
import { findClicks, type RenderedClick, renderWalk } from './render';

export interface PassageRendering {
  readonly playing: Playing;
  readonly countInBeats: number;
  readonly start: number;
  readonly sampleRate: number;
  readonly seconds: number;
  readonly volume: number;
}

const render = ({ playing, countInBeats, start, volume, ...size }: PassageRendering) =>
  renderWalk(size, (context) => {
    const { sound } = createVoices(context, volume, createLimiter(context));
    const turns = turnsOf(passageOf(playing, start, countInBeats));
    return walkRow(turns, 0 - countInBeats, { now: () => context.currentTime, sound });
  });

/** As a string, which comes out of the page much faster than a list of numbers. */
const base64 = (samples: Float32Array): string =>
  btoa(Array.from(new Uint8Array(samples.buffer), (byte) => String.fromCharCode(byte)).join(''));

const harness = {
  /** The samples of a passage: 32-bit floats in base64. */
  render: async (task: PassageRendering): Promise<string> => base64(await render(task)),
  /** The clicks in a passage in which nothing else sounds. */
  clicks: async (task: PassageRendering): Promise<RenderedClick[]> =>
    findClicks(await render(task)),
};

declare global {
  interface Window {
    playbackHarness: typeof harness;
  }
}

window.playbackHarness = harness;
