/**
 * How much later than the browser believes this device's sound is heard: the app sends clicks, and hears by the
 * microphone when they come. Nothing of the recording is kept.
 */
import { CLICK_TIMES, latencyOf, LONGEST_DELAY } from '../../shared/listening/sound/latency';
import { median } from '../../shared/listening/statistics';
import { clickSamples, createClicker } from './click';
import { heardAt, type OutputClock } from './heard';
import { createMicrophone } from './microphone';

export type Lateness =
  /** Milliseconds by which sound is heard later than the browser believes; less than 0 if sooner. */
  | { readonly kind: 'measured'; readonly offsetMs: number }
  /** There is no microphone, the person or the browser said no, or it was cut off meanwhile. */
  | { readonly kind: 'refused' | 'missing' | 'cut-off' }
  /** The clicks are not in what was heard, or not evenly. */
  | { readonly kind: 'not-heard' | 'unsteady' }
  /** It was given up. */
  | { readonly kind: 'stopped' };

export interface LatenessOptions {
  /** Of the clicks: 0 to 1. */
  readonly volume: number;
  /** Aborted, it closes the microphone and stops. */
  readonly signal: AbortSignal;
}

/** Seconds before the first click: the output wakes up, and some microphones give silence at first. */
const BEFORE = 0.8;
/** Seconds in which the worklet hands over what it has, and a little. */
const AFTER = 0.3;
/** Milliseconds between two readings of the clocks. */
const APART = 100;

/** What the clocks of the page and of the context show at one moment. */
export interface Reading {
  /** Milliseconds of `performance.now()` at which the context's clock began, by this reading. */
  readonly began: number;
  /** Milliseconds of `performance.now()` at which a sound at 0 of that clock is believed to be heard. */
  readonly believed: number;
}

const readingOf = (context: OutputClock, now: number): Reading => ({
  began: now - 1000 * context.currentTime,
  believed: heardAt(context, 0, now),
});

/**
 * Milliseconds by which sound is heard later than believed. `delay` is from the sending of a click to its arrival in the
 * recording, by the context's clock; `inputLatency` is what of that the device says is the microphone's own. Both in
 * seconds. What the device does not say of its microphone, often 10 to 20 milliseconds, is left in the result. The
 * context's clock goes on in jumps, so that most readings come late: the earliest is the true one.
 */
export function offsetOf(
  delay: number,
  inputLatency: number,
  readings: readonly Reading[],
): number {
  const believed = median(readings.map((reading) => reading.believed));
  if (believed === null) throw new RangeError('no reading of the clocks');
  const began = Math.min(...readings.map((reading) => reading.began));
  return 1000 * (delay - inputLatency) - (believed - began);
}

/**
 * Measures for about seven seconds. To be called in a user's gesture: the browser may ask for the microphone. A wireless
 * loudspeaker that is a microphone as well may sound sooner or later while it listens; so the result is only proposed.
 */
export async function measureLateness({ volume, signal }: LatenessOptions): Promise<Lateness> {
  const microphone = createMicrophone();
  const capture = await microphone.open();
  if (capture === null) {
    return { kind: microphone.state.value === 'refused' ? 'refused' : 'missing' };
  }
  try {
    const { context, inputLatency } = capture;
    const start = context.currentTime + BEFORE;
    const times = CLICK_TIMES.map((time) => start + time);
    const clicker = createClicker(context, volume);
    for (const time of times) clicker.click({ time, isAccent: true });
    const end = times.at(-1)! + LONGEST_DELAY + AFTER;
    const readings: Reading[] = [];
    while (context.currentTime < end) {
      await pause(APART);
      if (signal.aborted) return { kind: 'stopped' };
      if (capture.isBroken.value) return { kind: 'cut-off' };
      readings.push(readingOf(context, performance.now()));
    }
    const begin = capture.beginsAt();
    const found = latencyOf(
      capture.sound(),
      clickSamples(context.sampleRate, true),
      times.map((time) => time - begin),
    );
    if (found.kind !== 'measured') return { kind: found.kind };
    return { kind: 'measured', offsetMs: offsetOf(found.delay, inputLatency, readings) };
  } finally {
    capture.stop();
  }
}

const pause = (milliseconds: number) =>
  new Promise<void>((done) => {
    setTimeout(done, milliseconds);
  });
