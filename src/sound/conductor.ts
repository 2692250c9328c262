/** Lets music run on a clock: looks ahead often, and tells each thing when it is heard. */
import { computed, signal, type ReadonlySignal } from '@preact/signals';
import type { SoundClock } from './clock';
import { startTicker } from './ticker';
import { LOOK_AHEAD, type Timed, type Walk } from './walk';

/** 'interrupted': the browser holds the sound back, and the music waits; offer `resume`. */
export type SoundState = 'running' | 'interrupted' | 'stopped';

export interface Conductor<Thing> {
  readonly state: ReadonlySignal<SoundState>;
  /** From `since` on (seconds of the clock) the music goes this way. */
  follow(walk: Walk<Thing>, since: number): void;
  /** Nothing is told after that. The clock is left open. */
  stop(): void;
}

/** Milliseconds. What is changed now is on the screen with the next frame, so it is told a little before its time. */
const HALF_FRAME = 8;

/**
 * `onHeard` gets each thing with the time at which it is heard, in milliseconds of `performance.now()`. Those that a
 * sleeping page missed come in order, late, with the time they had.
 */
export function conduct<Thing extends Timed>(
  clock: SoundClock,
  onHeard: (thing: Thing, at: number) => void,
): Conductor<Thing> {
  const isStopped = signal(false);
  let walk: Walk<Thing> | null = null;
  let waiting: readonly Thing[] = [];

  const advance = () => {
    if (!clock.isRunning.value || walk === null) return;
    waiting = [...waiting, ...walk(document.hidden ? LOOK_AHEAD.hidden : LOOK_AHEAD.visible)];
    // `onHeard` may stop the music: nothing comes after that.
    while (!isStopped.value && waiting[0] !== undefined) {
      const [thing, ...later] = waiting;
      const at = clock.heardAt(thing.time);
      if (at > performance.now() + HALF_FRAME) return;
      waiting = later;
      onHeard(thing, at);
    }
  };

  // Ticks go on in a hidden page; frames let a thing be seen at its time.
  const stopTicker = startTicker(advance);
  let frame = requestAnimationFrame(function onFrame() {
    frame = requestAnimationFrame(onFrame);
    advance();
  });
  document.addEventListener('visibilitychange', advance);

  return {
    state: computed(() => {
      if (isStopped.value) return 'stopped';
      return clock.isRunning.value ? 'running' : 'interrupted';
    }),
    follow: (next, since) => {
      waiting = waiting.filter(({ time }) => time < since);
      walk = next;
      advance();
    },
    stop: () => {
      if (isStopped.value) return;
      isStopped.value = true;
      stopTicker();
      cancelAnimationFrame(frame);
      document.removeEventListener('visibilitychange', advance);
    },
  };
}
