/** Starts, changes and ends the sound of a score, and tells where it is. One at a time. */
import { computed, effect, signal, type ReadonlySignal, type Signal } from '@preact/signals';
import type { Playing } from '../../sound/passage';
import type { Playback, PlaybackOptions } from '../../sound/playback';
import { keepScreenLit, type WakeLock } from '../../sound/wake-lock';

export interface Player {
  /** 'interrupted': the browser holds the sound back; offer `resume`. */
  readonly state: ReadonlySignal<'running' | 'interrupted' | 'stopped'>;
  /** No sound could be had: the place moves without it. */
  readonly isSilent: ReadonlySignal<boolean>;
  /** To be called in a user's gesture, without an `await` before it. */
  start(options: Omit<PlaybackOptions, 'sound'>): void;
  /** While it is running. */
  change(playing: Playing): void;
  resume(): void;
  stop(): void;
}

type StartPlayback = (options: PlaybackOptions) => Promise<Playback>;

/** `place` gets the place that is heard, null while there is none; see Playback in src/sound. */
export function createPlayer(startPlayback: StartPlayback, place: Signal<number | null>): Player {
  const isOn = signal(false);
  const isSilent = signal(false);
  const playback = signal<Playback | null>(null);
  let lock: WakeLock | null = null;
  let unfollow: (() => void) | null = null;
  /** Counts starts and stops, so that a playback that comes too late is known as such. */
  let turn = 0;
  /** What was asked for while the sound output was still opening. */
  let latest: Playing | null = null;

  const stop = () => {
    if (!isOn.peek()) return;
    turn += 1;
    unfollow?.();
    unfollow = null;
    playback.peek()?.stop();
    playback.value = null;
    lock?.release();
    isOn.value = false;
    place.value = null;
  };
  const follow = (started: Playback) => {
    playback.value = started;
    if (latest !== null) started.change(latest);
    unfollow = effect(() => {
      place.value = started.place.value;
      if (started.state.value === 'stopped') stop();
    });
  };

  return {
    state: computed(() => (isOn.value ? (playback.value?.state.value ?? 'running') : 'stopped')),
    isSilent,
    start: (options) => {
      stop();
      isOn.value = true;
      isSilent.value = false;
      latest = null;
      lock = keepScreenLit();
      const ours = turn;
      const begin = (sound: boolean) =>
        startPlayback({ ...options, sound }).then((started) => {
          if (ours === turn) follow(started);
          else started.stop();
        });
      begin(true).catch(() => {
        if (ours !== turn) return;
        isSilent.value = true;
        void begin(false);
      });
    },
    change: (playing) => {
      if (playback.peek() === null) latest = playing;
      else playback.peek()!.change(playing);
    },
    resume: () => void playback.peek()?.resume(),
    stop,
  };
}
