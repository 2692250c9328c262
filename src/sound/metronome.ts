import type { ReadonlySignal } from '@preact/signals';
import { createClicker, FADE } from './click';
import { LEAD, openAudioClock, openSilentClock } from './clock';
import { conduct, type SoundState } from './conductor';
import { checkGrid, type GridBeat, walkGrid } from './schedule';

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
  /** The beat sounds only while it is counted in: a microphone would hear it. */
  readonly isCountInOnly?: boolean;
  /** Milliseconds by which sound is heard later than the browser believes, as with some wireless loudspeakers. */
  readonly latencyOffsetMs: number;
  /** Called when the beat is to be seen. Beats that a sleeping page missed come in order, late, with the time they had. */
  readonly onBeat: (beat: Beat) => void;
}

export interface Metronome {
  readonly state: ReadonlySignal<SoundState>;
  /** To be called in a user's gesture. The beats go on where they stood. */
  resume(): Promise<void>;
  stop(): void;
}

/**
 * Starts a metronome. To be called in a user's gesture, without an `await` before it: only then may a page sound. Rejects
 * with a RangeError for a tempo or a count that is none, and with the browser's error where it has no sound output.
 */
export async function startMetronome(options: MetronomeOptions): Promise<Metronome> {
  const { beatsPerMinute, countInBeats, beatsPerBar = null } = options;
  const shape = { beatsPerMinute, countInBeats, beatsPerBar };
  checkGrid(shape);
  const clock = options.sound ? openAudioClock(options.latencyOffsetMs) : openSilentClock();
  const clicker = clock.context && createClicker(clock.context, options.volume);
  await clock.resume();

  const conductor = conduct<GridBeat>(clock, ({ index, isAccent }, at) =>
    options.onBeat({ index, at, isAccent }),
  );
  const start = clock.now() + LEAD + (countInBeats * 60) / beatsPerMinute;
  const click = (beat: GridBeat) => {
    if (options.isCountInOnly !== true || beat.index < 0) clicker?.click(beat);
  };
  conductor.follow(walkGrid({ ...shape, start }, { now: clock.now, click }), start);

  return {
    state: conductor.state,
    resume: clock.resume,
    stop: () => {
      if (conductor.state.value === 'stopped') return;
      conductor.stop();
      clicker?.silence();
      clock.close(FADE);
    },
  };
}
