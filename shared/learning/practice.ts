/** What practice and pauses do to an item, whatever the ratings say. */
import type { Item } from '../music/deck';
import type { Learner } from './learner';

const LONGEST_STABILITY = 300;

/** What a pause takes, in octaves of tempo: a power law. */
export const lossAfter = (days: number, stability: number): number =>
  0.1 * Math.log2(1 + days / stability);

/** Calendar days since the item's last run; 0 for one that was never played, as it has nothing to lose. */
export function pauseOf(learner: Learner, item: Item, day: number): number {
  const last = learner.lastDay[item.index]!;
  return last === 0 ? 0 : Math.max(0, day - last);
}

/** What practice does to an item, whatever the rating: it regains half of the loss and gains a little. */
interface Practised {
  readonly residual: number;
  readonly runs: number;
  readonly stability: number;
}

/** The item after one more run on a day, as far as that does not depend on how the run went. */
export function practised(
  learner: Learner,
  item: Item,
  day: number,
  brokeDown: boolean,
): Practised {
  const i = item.index;
  const pause = pauseOf(learner, item, day);
  const stability = learner.stability[i]!;
  const isNewDay = learner.lastDay[i]! < day;
  const before = isNewDay ? 0 : learner.runsThatDay[i]!;
  const share = 1 / (1 + 0.7 * before);
  const runs = learner.runs[i]!;
  return {
    residual: learner.residual[i]! - 0.5 * lossAfter(pause, stability) + (0.4 / (runs + 4)) * share,
    runs: runs + share,
    stability:
      isNewDay && !brokeDown
        ? Math.min(LONGEST_STABILITY, stability * (1 + 0.8 * Math.min(1, pause / stability)))
        : stability,
  };
}

/** Counts a run in, as to practice only (used on its own when a day is planned ahead). Changes the learner. */
export function practise(learner: Learner, item: Item, day: number, brokeDown = false): void {
  const i = item.index;
  const next = practised(learner, item, day, brokeDown);
  learner.runsThatDay[i] = learner.lastDay[i]! < day ? 1 : learner.runsThatDay[i]! + 1;
  learner.residual[i] = next.residual;
  learner.runs[i] = next.runs;
  learner.stability[i] = next.stability;
  learner.lastDay[i] = Math.max(learner.lastDay[i]!, day);
}
