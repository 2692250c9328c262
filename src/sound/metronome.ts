import { computed, signal, type ReadonlySignal } from '@preact/signals';
import { openAudioClock, openSilentClock } from './clock';
import { checkGrid, LOOK_AHEAD, walkGrid, type GridBeat } from './schedule';
import { startTicker } from './ticker';

export interface Beat {
  /** 0 is the first beat of the music; the count-in has negative numbers. */
  readonly index: number;
  /** When the beat is heard: milliseconds of `performance.now()`. */
  readonly at: number;
  readonly isAccent: boolean;
}

export interface MetronomeOptions {
  readonly beatsPerMinute: number;
  readonly countInBeats: number;
  /** Without it only the first beat of the music is accented. */
  readonly beatsPerBar?: number;
  /** 0 to 1. */
  readonly volume: number;
  /** False: the beat is only shown, and the device's sound output is left alone. */
  readonly sound: boolean;
  /** Milliseconds by which sound is heard later than the browser believes, as with some wireless loudspeakers. */
  readonly latencyOffsetMs: number;
  /** Called when the beat is to be seen. Beats that a sleeping page missed come in order, late, with the time they had. */
  readonly onBeat: (beat: Beat) => void;
}

export interface Metronome {
  /** 'interrupted': the browser holds the sound back, and the beats wait; offer `resume`. */
  readonly state: ReadonlySignal<'running' | 'interrupted' | 'stopped'>;
  /** To be called in a user's gesture. The beats go on where they stood. */
  resume(): Promise<void>;
  stop(): void;
}

/** Seconds between the start and the first beat: time for a device's sound output to wake up. */
const LEAD = 0.2;

/** Milliseconds. What is changed now is on the screen with the next frame, so a beat is shown a little before its time. */
const HALF_FRAME = 8;

/**
 * Starts a metronome. To be called in a user's gesture, without an `await` before it: only then may a page sound. Rejects
 * with a RangeError for a tempo or a count that is none, and with the browser's error where it has no sound output.
 */
export async function startMetronome(options: MetronomeOptions): Promise<Metronome> {
  const { beatsPerMinute, countInBeats, beatsPerBar = null } = options;
  const shape = { beatsPerMinute, countInBeats, beatsPerBar };
  checkGrid(shape);
  const clock = options.sound
    ? openAudioClock(options.volume, options.latencyOffsetMs)
    : openSilentClock();
  await clock.resume();

  const isStopped = signal(false);
  const start = clock.now() + LEAD + (countInBeats * 60) / beatsPerMinute;
  const walk = walkGrid({ ...shape, start }, clock);
  const waiting: GridBeat[] = [];

  const advance = () => {
    if (!clock.isRunning.value) return;
    waiting.push(...walk(document.hidden ? LOOK_AHEAD.hidden : LOOK_AHEAD.visible));
    // `onBeat` may stop the metronome: no beat comes after that.
    while (!isStopped.value && waiting[0] !== undefined) {
      const { index, time, isAccent } = waiting[0];
      const at = clock.heardAt(time);
      if (at > performance.now() + HALF_FRAME) return;
      waiting.shift();
      options.onBeat({ index, at, isAccent });
    }
  };

  // Ticks go on in a hidden page; frames let a beat be seen at its time.
  const stopTicker = startTicker(advance);
  let frame = requestAnimationFrame(function onFrame() {
    frame = requestAnimationFrame(onFrame);
    advance();
  });
  document.addEventListener('visibilitychange', advance);
  advance();

  return {
    state: computed(() => {
      if (isStopped.value) return 'stopped';
      return clock.isRunning.value ? 'running' : 'interrupted';
    }),
    resume: clock.resume,
    stop: () => {
      if (isStopped.value) return;
      isStopped.value = true;
      stopTicker();
      cancelAnimationFrame(frame);
      document.removeEventListener('visibilitychange', advance);
      clock.close();
    },
  };
}
