/** What practice and pauses do to an item, whatever the ratings say. */
import { type Item, itemAt } from '../music/deck';
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

/**
 * What a run of both hands over two octaves does for four, of what one over four would do: the same moves over half of
 * the keys (own choice: in the lab 0.5 to 0.65 serve every family, and 0.8 one of them badly).
 */
const HALF_THE_WAY = 0.6;
/** What each earlier run of the day takes from the next. */
const MASSING = 0.7;

/** Of the gain of a fresh run, what one has that comes after others of the item on the same day. */
function shareOnDay(learner: Learner, { index }: Item, day: number): number {
  const before = learner.lastDay[index]! < day ? 0 : learner.runsThatDay[index]!;
  return 1 / (1 + MASSING * before);
}

/** What a run of an item gains after those before it, in octaves: a power law of practice. */
const gainOf = (learner: Learner, { index }: Item): number =>
  0.4 / (learner.runs[index]! + learner.service[index]! + 4);

/** The item that a run of another one serves besides: four octaves, once they were played; null for none. */
export function servedBy(learner: Learner, item: Item): Item | null {
  if (item.way !== 'together.2') return null;
  const served = itemAt(item.arpeggioIndex, 'together.4');
  return learner.runs[served.index]! > 0 ? served : null;
}

/** What a run of an item on a day adds to one that it serves, in octaves. */
export const serviceOf = (learner: Learner, item: Item, served: Item, day: number): number =>
  HALF_THE_WAY * gainOf(learner, served) * shareOnDay(learner, item, day);

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
  const share = shareOnDay(learner, item, day);
  return {
    residual:
      learner.residual[i]! - 0.5 * lossAfter(pause, stability) + gainOf(learner, item) * share,
    runs: learner.runs[i]! + share,
    stability:
      isNewDay && !brokeDown
        ? Math.min(LONGEST_STABILITY, stability * (1 + 0.8 * Math.min(1, pause / stability)))
        : stability,
  };
}

/** Counts a run in, as to practice only (used on its own when a day is planned ahead). Changes the learner. */
export function practise(learner: Learner, item: Item, day: number, brokeDown = false): void {
  const i = item.index;
  const served = servedBy(learner, item);
  if (served !== null) {
    learner.residual[served.index]! += serviceOf(learner, item, served, day);
    learner.service[served.index]! += HALF_THE_WAY * shareOnDay(learner, item, day);
  }
  const next = practised(learner, item, day, brokeDown);
  learner.runsThatDay[i] = learner.lastDay[i]! < day ? 1 : learner.runsThatDay[i]! + 1;
  learner.residual[i] = next.residual;
  learner.runs[i] = next.runs;
  learner.stability[i] = next.stability;
  learner.lastDay[i] = Math.max(learner.lastDay[i]!, day);
}
