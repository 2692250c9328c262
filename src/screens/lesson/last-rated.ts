import type { RunEvent } from '../../../shared/log/events';
import { type Item, itemOf } from '../../../shared/music/deck';

/** What the teacher rated last today: the lesson goes on there. */
export function lastRated(runs: readonly RunEvent[]): Item | null {
  const last = runs.findLast(({ judge }) => judge === 'teacher');
  return last === undefined ? null : itemOf(last.item);
}
