/** Chooses the reason of an entry from the state of the item in it that lacks most. */
import { daysBetween } from '../log/day';
import type { Day } from '../log/events';
import type { Programme } from '../log/programme';
import { type Item, STAGES, stageIndex } from '../music/deck';
import { reachOf } from '../learning/prediction';
import type { Reason } from './reasons';
import type { Student } from './student';

/** A pause of so many days is reason enough in itself. */
const LONG_PAUSE = 7;

export function reasonFor(
  student: Student,
  programme: Programme,
  items: readonly Item[],
  day: Day,
): Reason {
  const byReach = items
    .map((item) => ({ item, reach: reachOf(student.learner, item, day).tempo }))
    .toSorted((a, b) => a.reach - b.reach || a.item.index - b.item.index);
  const { item, reach } = byReach[0]!;
  const last = student.lastRuns.get(item.id);
  const stage = stageIndex(item.way);
  if (last === undefined) {
    const isOpened = stage > stageIndex(programme.reached);
    return { kind: 'new', below: isOpened ? STAGES[stage - 1]! : null, reach };
  }
  const weakest = { chord: items.length === 1 ? null : item.chord, last, day, reach };
  if (daysBetween(last.day, day) >= LONG_PAUSE) return { kind: 'rested', ...weakest };
  const { target } = programme.stages[STAGES[stage]!];
  return reach < target ? { kind: 'short', target, ...weakest } : { kind: 'keep', ...weakest };
}
