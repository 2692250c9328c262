/** The two clocks that the metronome can run on: the one of the sound output, and the page's own when it is to be silent. */

import { signal, type ReadonlySignal } from '@preact/signals';
import { createClicker, FADE } from './click';
import { heardAt } from './heard';
import type { BeatClock } from './schedule';

export interface MetronomeClock extends BeatClock {
  /** False while the browser holds the sound back, as during a telephone call. The clock stands still meanwhile. */
  readonly isRunning: ReadonlySignal<boolean>;
  /** `performance.now()` milliseconds at which a beat at `time` (seconds of this clock) is heard. */
  heardAt(time: number): number;
  /** Asks the browser for the sound again. To be called in a user's gesture. */
  resume(): Promise<void>;
  close(): void;
}

/** Milliseconds after which the metronome goes on without an answer: a browser may leave `resume` open for ever. */
const PATIENCE = 1000;

const pause = (ms: number) =>
  new Promise<void>((done) => {
    setTimeout(done, ms);
  });

/**
 * On iOS the silent switch mutes a page's sound unless the page says that it plays something. That also stops the music
 * of other apps, so it is said only while the metronome sounds. Safari 16.4 on; not in TypeScript's DOM types yet.
 */
function setAudioSession(type: 'playback' | 'auto'): void {
  const { audioSession } = navigator as Navigator & { audioSession?: { type: string } };
  if (audioSession !== undefined) audioSession.type = type;
}

/** Opens the sound output: to be called in a user's gesture. `offsetMs` corrects the latency that the browser states. */
export function openAudioClock(volume: number, offsetMs: number): MetronomeClock {
  setAudioSession('playback');
  const context = new AudioContext({ latencyHint: 'interactive' });
  const clicker = createClicker(context, volume);
  const isRunning = signal(context.state === 'running');
  const watch = () => {
    isRunning.value = context.state === 'running';
  };
  context.addEventListener('statechange', watch);
  return {
    isRunning,
    now: () => context.currentTime,
    click: clicker.click,
    heardAt: (time) => heardAt(context, time, performance.now()) + offsetMs,
    resume: async () => {
      // A refusal is no error of ours: `isRunning` stays false, and the screen offers to try again.
      await Promise.race([context.resume().catch(() => undefined), pause(PATIENCE)]);
      watch();
    },
    close: () => {
      context.removeEventListener('statechange', watch);
      clicker.silence();
      setAudioSession('auto');
      setTimeout(() => void context.close(), FADE * 1000);
    },
  };
}

/** The page's clock, for a beat that is only seen: it needs no sound output and leaves the music of other apps alone. */
export function openSilentClock(): MetronomeClock {
  return {
    isRunning: signal(true),
    now: () => performance.now() / 1000,
    click: () => undefined,
    heardAt: (time) => time * 1000,
    resume: () => Promise.resolve(),
    close: () => undefined,
  };
}
