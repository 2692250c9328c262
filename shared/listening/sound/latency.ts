/**
 * How much later than they were sent clicks are in a recording. A matched filter finds them (Turin 1960, "An introduction
 * to matched filters", IRE Transactions on Information Theory 6:311): it knows what they sound like, so that it hears them
 * in noise and tells them from a piano, and it is exact to a fraction of a millisecond.
 */
import { median } from '../statistics';
import type { Sound } from './spectrum';

export type Latency =
  /** Seconds: the median over the clicks, and that of each click that was heard. */
  | { readonly kind: 'measured'; readonly delay: number; readonly delays: readonly number[] }
  /** Too few of the clicks are in the recording. */
  | { readonly kind: 'not-heard' }
  /** Something is heard, not with one and the same delay. */
  | { readonly kind: 'unsteady'; readonly delays: readonly number[] };

/** Seconds: the longest delay that is looked for. Clicks are further apart than that. */
export const LONGEST_DELAY = 0.6;
/** Seconds from the first click to each: no two gaps alike, so that a later delay makes no click fit the next one's place. */
export const CLICK_TIMES: readonly number[] = [0, 0.7, 1.55, 2.2, 3, 3.75, 4.65, 5.27];
/** Seconds from a click's beginning that are compared; what follows is too soft to help. */
const COMPARED = 0.02;
/** Places a second at which the click is tried: enough for its highest partial. */
const TRIED = 24_000;
/** Correlation, 0 to 1, from which on it is the click that is heard. Measured: pink noise 0.16, clicks 15 dB below it 0.8. */
const LEAST_LIKENESS = 0.3;
/** Share of the clicks that must be heard, and with the same delay. */
const ENOUGH = 0.5;
/** So that silence is like nothing. */
const SILENT = 1e-12;
/** Seconds within which delays are the same. */
const TOGETHER = 0.004;

/**
 * `click`: the samples that were sent, at the recording's rate. `times`: seconds after the recording's first sample at
 * which they were sent. Throws a RangeError for times that are nearer together than the longest delay.
 */
export function latencyOf(sound: Sound, click: Float32Array, times: readonly number[]): Latency {
  const near = times.find((time, i) => time - (times[i - 1] ?? -Infinity) < LONGEST_DELAY);
  if (near !== undefined) throw new RangeError(`a click too near to the one before: ${near}`);
  const compared = brightened(click.subarray(0, Math.round(COMPARED * sound.rate)));
  const all = brightened(sound.samples);
  const delays = times.flatMap((time) => {
    const delay = delayOf({ samples: all, rate: sound.rate }, compared, time);
    return delay === null ? [] : [delay];
  });
  const middle = median(delays);
  if (middle === null || delays.length < ENOUGH * times.length) return { kind: 'not-heard' };
  const together = delays.filter((delay) => Math.abs(delay - middle) <= TOGETHER);
  if (together.length < ENOUGH * times.length) return { kind: 'unsteady', delays };
  return { kind: 'measured', delay: median(together)!, delays };
}

/** Differences from sample to sample: rooms and pianos are loudest where the click has nothing. */
const brightened = (samples: Float32Array): Float32Array =>
  samples.map((value, i) => value - (samples[i - 1] ?? 0));

/** Where after `time` it sounds most like the click, counted the more the louder it is; null if nowhere enough. */
function delayOf({ samples, rate }: Sound, click: Float32Array, time: number): number | null {
  const step = Math.max(1, Math.round(rate / TRIED));
  const from = Math.max(0, Math.round(time * rate));
  const to = Math.min(samples.length - click.length, from + Math.round(LONGEST_DELAY * rate));
  const energy = click.reduce((sum, value) => sum + value * value, 0);
  let [best, delay, likeness] = [0, 0, 0];
  for (let at = from; at < to; at += step) {
    let [product, loudness] = [0, 0];
    for (let i = 0; i < click.length; i++) {
      const value = samples[at + i]!;
      product += click[i]! * value;
      loudness += value * value;
    }
    const alike = Math.abs(product) / Math.sqrt(energy * loudness + SILENT);
    if (alike * Math.abs(product) <= best) continue;
    best = alike * Math.abs(product);
    [delay, likeness] = [at / rate - time, alike];
  }
  return likeness < LEAST_LIKENESS ? null : delay;
}
