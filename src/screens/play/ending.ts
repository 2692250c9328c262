/** When a run in which the player is followed is over: a while after the last note, or after the rest in which it stays out. */
import type { Pace } from './pace';

/** Beats as they were set after the last note, and milliseconds at least. */
const AFTER_LAST = 2;
const AFTER_LAST_AT_LEAST = 1500;
/** Beats as they are played after a last note was due that did not come, likewise: longer than any hesitation (shared/log/take-limits.ts). */
const AFTER_MISSED = 4;
const AFTER_MISSED_AT_LEAST = 3000;

export interface Ending {
  /** The player is at a step now. */
  reached(step: number): void;
  cancel(): void;
}

/** `last`: the step of the very last note. `pace`: as it was set; how fast the player is shows only later. */
export function endingAt(last: number, pace: Pace, finish: () => void): Ending {
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** From where on the player has gone forward, and the step that was reached last. */
  let since = { step: Infinity, at: 0 };
  let before = Infinity;

  const msToStep = (step: number, now: number): number =>
    step === since.step ? pace.msPerBeat / pace.grouping : (now - since.at) / (step - since.step);

  return {
    reached: (step) => {
      clearTimeout(timer);
      const now = performance.now();
      if (step <= before) since = { step, at: now };
      before = step;
      if (step >= last) {
        timer = setTimeout(finish, Math.max(AFTER_LAST_AT_LEAST, AFTER_LAST * pace.msPerBeat));
      } else if (step === last - 1) {
        const due = msToStep(step, now);
        const rest = Math.max(AFTER_MISSED_AT_LEAST, AFTER_MISSED * pace.grouping * due);
        timer = setTimeout(finish, due + rest);
      }
    },
    cancel: () => clearTimeout(timer),
  };
}
