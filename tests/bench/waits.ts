/** Which waits a playing has in truth: a planted one can be swallowed by the spread of the notes, and chance makes others. */
import { deviation, mean } from '../../shared/listening/statistics';
import { leastWait } from '../../shared/log/take-limits';
import type { Hand } from '../../shared/music/fingering/types';

export interface PlayedNote {
  readonly step: number;
  readonly hand: Hand;
  /** Seconds. */
  readonly on: number;
}

/** By how much more a spread of few others is to be doubted, as in shared/listening/pulse.ts. */
const FEW_OTHERS = 2;

/**
 * Steps to which a hand took surely longer than to the others. `due`: true seconds from note to note. The spread of the
 * others is that of the playing, without the `planted` step.
 */
export function stepsWaitedFor(
  notes: readonly PlayedNote[],
  due: number,
  planted: number | null,
): ReadonlySet<number> {
  const steps = new Set<number>();
  for (const hand of ['right', 'left'] as const) {
    const own = notes.filter((note) => note.hand === hand);
    const lates = own.slice(1).map(({ step, on }, i) => {
      const before = own[i]!;
      return { step, late: 1000 * (on - before.on - (step - before.step) * due) };
    });
    for (const { step, late } of lates) {
      const others = lates.filter((one) => one.step !== step && one.step !== planted);
      const values = others.map((one) => one.late);
      const spread = deviation(values)! * (1 + FEW_OTHERS / values.length);
      if (late - mean(values)! >= leastWait(1000 * due, spread)) steps.add(step);
    }
  }
  return steps;
}
