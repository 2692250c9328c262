/** The two clocks that music can run on: the one of the sound output, and the page's own when it is to be silent. */

import { signal, type ReadonlySignal } from '@preact/signals';
import { heardAt } from './heard';

export interface SoundClock {
  /** What sounds are made with; null on the silent clock. */
  readonly context: AudioContext | null;
  /** Seconds. */
  now(): number;
  /** False while the browser holds the sound back, as during a telephone call. The clock stands still meanwhile. */
  readonly isRunning: ReadonlySignal<boolean>;
  /** `performance.now()` milliseconds at which a beat at `time` (seconds of this clock) is heard. */
  heardAt(time: number): number;
  /** Asks the browser for the sound again. To be called in a user's gesture. */
  resume(): Promise<void>;
  /** Closes the output after the seconds that the sound takes to fade. */
  close(fade: number): void;
}

/** Seconds between the start and the first sound: time for a device's sound output to wake up. */
export const LEAD = 0.2;

/** Milliseconds after which the music goes on without an answer: a browser may leave `resume` open for ever. */
const PATIENCE = 1000;

const pause = (ms: number) =>
  new Promise<void>((done) => {
    setTimeout(done, ms);
  });

/**
 * On iOS the silent switch mutes a page's sound unless the page says that it plays something, or that it records as well.
 * That also stops the music of other apps, so it is said only while it is so. Safari 16.4 on; not in TypeScript's DOM
 * types yet.
 */
export function setAudioSession(type: 'playback' | 'play-and-record' | 'auto'): void {
  const { audioSession } = navigator as Navigator & { audioSession?: { type: string } };
  if (audioSession !== undefined) audioSession.type = type;
}

/** Opens the sound output: to be called in a user's gesture. `offsetMs` corrects the latency that the browser states. */
export function openAudioClock(offsetMs: number): SoundClock {
  setAudioSession('playback');
  const context = new AudioContext({ latencyHint: 'interactive' });
  const isRunning = signal(context.state === 'running');
  const watch = () => {
    isRunning.value = context.state === 'running';
  };
  context.addEventListener('statechange', watch);
  return {
    context,
    isRunning,
    now: () => context.currentTime,
    heardAt: (time) => heardAt(context, time, performance.now()) + offsetMs,
    resume: async () => {
      // A refusal is no error of ours: `isRunning` stays false, and the screen offers to try again.
      await Promise.race([context.resume().catch(() => undefined), pause(PATIENCE)]);
      watch();
    },
    close: (fade) => {
      context.removeEventListener('statechange', watch);
      setAudioSession('auto');
      setTimeout(() => void context.close(), fade * 1000);
    },
  };
}

/** The page's clock, for a beat that is only seen: it needs no sound output and leaves the music of other apps alone. */
export function openSilentClock(): SoundClock {
  return {
    context: null,
    isRunning: signal(true),
    now: () => performance.now() / 1000,
    heardAt: (time) => time * 1000,
    resume: () => Promise.resolve(),
    close: () => undefined,
  };
}
