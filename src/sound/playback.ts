import { signal, type ReadonlySignal } from '@preact/signals';
import { createClicker, FADE } from './click';
import { LEAD, openAudioClock, openSilentClock } from './clock';
import { conduct, type SoundState } from './conductor';
import { createLimiter } from './limiter';
import { goOn, indexAt, passageOf, type Playing, type Turn, turnsOf } from './passage';
import { createPiano } from './piano';
import { due, LOOK_AHEAD, walkRow } from './walk';

export interface PlaybackOptions {
  readonly playing: Playing;
  readonly countInBeats: number;
  /** 0 to 1. */
  readonly volume: number;
  /** False: the place only moves, and the device's sound output is left alone. */
  readonly sound: boolean;
  /** Milliseconds by which sound is heard later than the browser believes. */
  readonly latencyOffsetMs: number;
}

export interface Playback {
  readonly state: ReadonlySignal<SoundState>;
  /**
   * Where the music is that is heard now: the place of the last note, rest or beat, in parts of a beat from the beginning
   * of the score. Null while beats are counted in and when it has stopped.
   */
  readonly place: ReadonlySignal<number | null>;
  /** Goes on in another way from where it is, without stopping. */
  change(playing: Playing): void;
  /** To be called in a user's gesture. The music goes on where it stood. */
  resume(): Promise<void>;
  /** Fades and ends; without repeats it also ends by itself. */
  stop(): void;
}

/** Seconds in which what sounds in the old way is cut off, smoothly, before the new way begins. */
const CUT = 0.01;
/** Seconds until a change is heard: time to hand over what comes first. */
const CHANGE_LEAD = 0.06;
/** Seconds in which the last note rings out. */
const RING = 0.5;

interface Voices {
  /** Computes beforehand what these turns need. */
  prepare(turns: readonly Turn[]): void;
  sound(turn: Turn): void;
  /** Fades, to be silent at `time`. */
  silence(time: number, fade: number): void;
}

const SILENT: Voices = {
  prepare: () => undefined,
  sound: () => undefined,
  silence: () => undefined,
};

/** All that sounds of one way of playing. */
export function createVoices(context: BaseAudioContext, volume: number, output: AudioNode): Voices {
  const bus = new GainNode(context);
  bus.connect(output);
  const clicker = createClicker(context, volume, bus);
  const piano = createPiano(context, volume, bus);
  return {
    prepare: (turns) => {
      for (const { midi } of turns.flatMap(({ strokes }) => strokes)) piano.prepare(midi);
    },
    sound: ({ time, strokes, click }) => {
      if (click !== null) clicker.click({ time, isAccent: click === 'accent' });
      for (const stroke of strokes) piano.strike(stroke, time);
    },
    silence: (time, fade) => {
      bus.gain.setValueAtTime(1, time - fade);
      bus.gain.linearRampToValueAtTime(0, time);
    },
  };
}

/**
 * Lets a score be heard. To be called in a user's gesture, without an `await` before it: only then may a page sound.
 * Rejects with a RangeError for a tempo or stretch that is none, and with the browser's error where it has no sound output.
 */
export async function startPlayback(options: PlaybackOptions): Promise<Playback> {
  const { countInBeats, volume } = options;
  // Before the sound output is opened, as it may throw.
  let passage = passageOf(options.playing, 0, countInBeats);
  const clock = options.sound ? openAudioClock(options.latencyOffsetMs) : openSilentClock();
  const { context } = clock;
  const limiter = context && createLimiter(context);
  const newVoices = () => (context && limiter ? createVoices(context, volume, limiter) : SILENT);
  let voices = newVoices();
  const opening = clock.resume();
  // Before the beginning is fixed: a slow device would come late with the first notes.
  voices.prepare(due(turnsOf(passage), 0, { now: 0, lookAhead: LOOK_AHEAD.visible }).ahead);
  await opening;

  const place = signal<number | null>(null);
  const end = (fade: number) => {
    conductor.stop();
    place.value = null;
    clock.close(fade);
  };
  const conductor = conduct<Turn>(clock, (turn) => {
    place.value = turn.place;
    if (turn.isEnd) end(RING);
  });
  const play = (since: number) => {
    const on = { now: clock.now, sound: voices.sound };
    conductor.follow(walkRow(turnsOf(passage), indexAt(passage, since), on), since);
  };
  const firstBeat = clock.now() + LEAD;
  const countIn = (countInBeats * 60) / options.playing.beatsPerMinute;
  passage = { ...passage, start: firstBeat + countIn };
  play(firstBeat);

  return {
    state: conductor.state,
    place,
    change: (playing) => {
      if (conductor.state.value === 'stopped') return;
      const since = clock.now() + CHANGE_LEAD;
      passage = goOn(passage, playing, since);
      voices.silence(since, CUT);
      voices = newVoices();
      play(since);
    },
    resume: clock.resume,
    stop: () => {
      if (conductor.state.value === 'stopped') return;
      voices.silence(clock.now() + FADE, FADE);
      end(FADE);
    },
  };
}
