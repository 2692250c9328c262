/** Where the work on an arpeggio stands today: rules STAGE, RETURN and EVE of RULES.md. */
import { dayNumber } from '../log/day';
import type { Day } from '../log/events';
import { itemAt, STAGES } from '../music/deck';
import type { Student } from './student';

/** After so many days without a run the day brings nothing new: it finds what held. */
const LONG_BREAK = 7;
/** In so many days before the date nothing new is begun. */
const EVE = 7;

/** Whether only items that were played before should come on a day. */
export function isNothingNew({ learner, programme }: Student, day: Day): boolean {
  const today = dayNumber(day);
  const last = learner.clock[0]!;
  if (last > 0 && today - last > LONG_BREAK) return true;
  const date = programme?.date ?? null;
  return date !== null && dayNumber(date) >= today && dayNumber(date) - today < EVE;
}

/** The stage at which an arpeggio is practised: the highest open, or on such a day the highest that was played. */
export function frontStage(
  { learner, stages }: Student,
  arpeggioIndex: number,
  isPlayedOnly: boolean,
): number {
  const open = stages.open[arpeggioIndex]!;
  if (!isPlayedOnly) return open;
  for (let stage = open; stage >= 0; stage--) {
    if (learner.runs[itemAt(arpeggioIndex, STAGES[stage]!).index]! > 0) return stage;
  }
  return open;
}
