/** How a student stands, as the few numbers that a teacher wants of each of many. The words are in src/screens/studio. */
import { addDays, daysBetween } from '../log/day';
import type { Day } from '../log/events';
import { readinessOf } from '../learning/readiness';
import type { Student } from './student';

/** Days: what "lately" means for practice and remarks. */
export const LATELY = 28;

export interface StudioFigures {
  /** Readiness of the programme today, 0 to 1; null without one. */
  readonly now: number | null;
  /** The same on the programme's date if nothing is played until then; null where there is no date to come. */
  readonly onDate: number | null;
  /** That of the programme, also when it is over. */
  readonly date: Day | null;
  /** By the calendar of where the student was; null before the first. */
  readonly lastPractice: Day | null;
  /** With practice, of the last 28. */
  readonly days: number;
  /** Of playing on these days, without the pauses between. */
  readonly seconds: number;
  /** Lately made by the player, and neither answered by the teacher nor followed by a report. */
  readonly remarks: number;
}

/** Calendar days by which another place of the earth can be ahead: from UTC-12 to UTC+14 it is up to two. */
const FURTHEST_AHEAD = 2;

/** `today` is that of the teacher; the student may have been where it is tomorrow already. */
export function studioFigures(student: Student, today: Day): StudioFigures {
  const { programme, learner, work } = student;
  const date = programme?.date ?? null;
  const shareOn = (day: Day): number | null =>
    programme === null ? null : readinessOf(learner, programme, day).share;
  const horizon = addDays(today, FURTHEST_AHEAD);
  const played = [...work.keys()].toSorted();
  const end = played.findLast((day) => day > today && day <= horizon) ?? today;
  const lately = played.filter((day) => day <= end && daysBetween(day, end) < LATELY);
  return {
    now: shareOn(today),
    onDate: date !== null && date >= today ? shareOn(date) : null,
    date,
    lastPractice: played.at(-1) ?? null,
    days: lately.length,
    seconds: lately.reduce((sum, day) => sum + work.get(day)!.seconds, 0),
    remarks: openRemarks(student, today),
  };
}

function openRemarks({ remarks, reports, examinations }: Student, today: Day): number {
  const byTeacher = [
    ...remarks.filter(({ by }) => by === 'teacher'),
    ...examinations.filter(({ judge }) => judge === 'teacher'),
    ...reports,
  ];
  const isOpen = ({ id, day }: Student['remarks'][number]): boolean =>
    daysBetween(day, today) < LATELY && byTeacher.every((answer) => answer.id < id);
  return remarks.filter((remark) => remark.by === 'player' && isOpen(remark)).length;
}
