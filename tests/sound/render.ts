/** Renders sound offline with the app's own scheduling, ticked as irregularly as in a page. */
import { LOOK_AHEAD, type Walk } from '../../src/sound/walk';

/** Irregular waits between two ticks, in seconds: mostly the worker's 25 ms, now and then as long as the look-ahead bears. */
const WAITS = [0.025, 0.025, 0.031, 0.02, 0.12, 0.025, 0.24, 0.004];

/** `walkOn` prepares the walk on the context that is to be rendered. */
export async function renderWalk(
  { sampleRate, seconds }: { readonly sampleRate: number; readonly seconds: number },
  walkOn: (context: OfflineAudioContext) => Walk<unknown>,
): Promise<Float32Array> {
  const context = new OfflineAudioContext(1, Math.round(seconds * sampleRate), sampleRate);
  const walk = walkOn(context);
  const tick = (count: number): void => {
    walk(LOOK_AHEAD.visible);
    const next = context.currentTime + WAITS[count % WAITS.length]!;
    if (next >= seconds) return;
    // The rendering waits for the tick, as the sound output of a page would not: a tick takes no time here.
    void context.suspend(next).then(() => {
      tick(count + 1);
      return context.resume();
    });
  };
  tick(0);
  return (await context.startRendering()).getChannelData(0);
}

export interface RenderedClick {
  /** Place of the click's first sample in the whole sound. */
  readonly sample: number;
  readonly peak: number;
}

/** So many silent samples end a click: more than any zero crossing has, fewer than lie between two clicks. */
const SILENCE = 200;

export function findClicks(samples: Float32Array): RenderedClick[] {
  const clicks: { sample: number; peak: number }[] = [];
  let silent = SILENCE;
  for (const [sample, value] of samples.entries()) {
    const level = Math.abs(value);
    if (level === 0) {
      silent += 1;
      continue;
    }
    if (silent >= SILENCE) clicks.push({ sample, peak: 0 });
    silent = 0;
    const current = clicks.at(-1)!;
    current.peak = Math.max(current.peak, level);
  }
  return clicks;
}
