/** Where the work on an arpeggio stands today: rules STAGE, RETURN and EVE of RULES.md. */
import { daysBetween } from '../log/day';
import type { Day } from '../log/events';
import { itemAt, STAGES } from '../music/deck';
import { daysOfEve } from './dates';
import type { Student } from './student';

/** After so many days without practice the day brings nothing new: it finds what held. */
const LONG_BREAK = 7;

/** The last day of practice before a day. */
function lastBefore({ work }: Student, day: Day): Day | null {
  let last: Day | null = null;
  for (const worked of work.keys()) {
    if (worked < day && (last === null || worked > last)) last = worked;
  }
  return last;
}

/** Whether only items that were played before should come on a day. */
export function isNothingNew(student: Student, day: Day): boolean {
  const last = lastBefore(student, day);
  if (last !== null && daysBetween(last, day) > LONG_BREAK) return true;
  return student.programme !== null && daysOfEve(student.programme, day) !== null;
}

/**
 * The stage at which an arpeggio is practised: the highest open, or on such a day the highest that was played, which is
 * -1 for one that never was.
 */
export function frontStage(
  { learner, stages }: Student,
  arpeggioIndex: number,
  isPlayedOnly: boolean,
): number {
  const open = stages.open[arpeggioIndex]!;
  if (!isPlayedOnly) return open;
  return STAGES.slice(0, open + 1).findLastIndex(
    (stage) => learner.runs[itemAt(arpeggioIndex, stage).index]! > 0,
  );
}
