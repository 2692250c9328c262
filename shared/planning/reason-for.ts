/** Chooses the reason of an entry from the state of the item in it that lacks most. */
import { daysBetween } from '../log/day';
import type { Day } from '../log/events';
import { asksFor, type Programme, targetFor, targetOfMost } from '../log/programme';
import { type Item, type Stage, STAGES, stageIndex } from '../music/deck';
import { servedBy } from '../learning/practice';
import { reachOf } from '../learning/prediction';
import type { Opened, Reason } from './reasons';
import type { Student } from './student';
import { turnOf } from './turns';

/** A pause of so many days is reason enough in itself. */
const LONG_PAUSE = 7;

/** Told of an item that was opened by what holds below it, or else of the first. */
function openedFor(student: Student, items: readonly Item[], day: Day): Opened | null {
  const turns = items.flatMap((item) => {
    const turn = student.lastRuns.has(item.id) ? null : turnOf(student, item);
    return turn === null ? [] : [{ item, turn }];
  });
  const told = turns.find(({ turn }) => turn.turn === 'holds') ?? turns[0];
  if (told === undefined) return null;
  return { chord: items.length === 1 ? null : told.item.chord, turn: told.turn, day };
}

/** Of some items of one way of playing the one whose reach is lowest for what is asked, with that reach. */
export function weakestOf({ learner, programme }: Student, items: readonly Item[], day: Day) {
  const most = targetOfMost(programme!, items[0]!.way);
  const [weakest] = items
    .map((item) => {
      const reach = reachOf(learner, item, day).tempo;
      return { item, reach, level: reach * (most / targetFor(programme!, item)) };
    })
    .toSorted((a, b) => a.level - b.level || a.item.index - b.item.index);
  return weakest!;
}

/** An entry of a stage that is not asked for is there for what it serves. */
function servesReason(
  student: Student,
  programme: Programme,
  items: readonly Item[],
  day: Day,
): Reason | null {
  const served = items.flatMap((item) =>
    asksFor(programme, item.way as Stage, item.chord)
      ? []
      : (servedBy(student.learner, item) ?? []),
  );
  if (served.length === 0) return null;
  const { item, reach } = weakestOf(student, served, day);
  return { kind: 'serves', reach, target: targetFor(programme, item) };
}

export function reasonFor(
  student: Student,
  programme: Programme,
  items: readonly Item[],
  day: Day,
): Reason {
  const { item, reach } = weakestOf(student, items, day);
  const last = student.lastRuns.get(item.id);
  const stage = stageIndex(item.way);
  if (last === undefined) {
    const isOpened = stage > stageIndex(programme.reached);
    if (!isOpened) return { kind: 'new', below: null, opened: null, reach };
    return {
      kind: 'new',
      below: STAGES[stage - 1]!,
      opened: openedFor(student, items, day),
      reach,
    };
  }
  const serves = servesReason(student, programme, items, day);
  if (serves !== null) return serves;
  const weakest = { chord: items.length === 1 ? null : item.chord, last, day, reach };
  if (daysBetween(last.day, day) >= LONG_PAUSE) return { kind: 'rested', ...weakest };
  const target = targetFor(programme, item);
  return reach < target ? { kind: 'short', target, ...weakest } : { kind: 'keep', ...weakest };
}
