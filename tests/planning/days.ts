/** Days of practice as they were planned, for the tests of the list. */
import { addDays } from '../../shared/log/day';
import type { Fluency } from '../../shared/log/events';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import type { ItemId } from '../../shared/music/deck';
import { type DayPlan, planDay } from '../../shared/planning/today';
import { applyEvents, newStudent, type Student } from '../../shared/planning/student';
import { programme, run, START } from '../learning/events';

export const onDay = (number: number) => addDays(START, number);

/** Plays a day's list as planned; `rate` says how each run comes out. */
export const played = (plan: DayPlan, day: number, rate: (item: ItemId) => Fluency = () => 3) =>
  plan.entries.flatMap((entry) =>
    entry.items.map((item) => run(item, rate(item), entry.tempo, day, entry.key)),
  );

/** Lives through days of practice and returns what was planned. */
export function practise(
  student: Student,
  days: readonly number[],
  rate?: (item: ItemId) => Fluency,
) {
  return days.map((day) => {
    const plan = planDay(student, onDay(day), 20);
    applyEvents(student, played(plan, day, rate), new Set());
    return plan;
  });
}

/** A student who has a programme and has played nothing. */
export const begun = (change?: Partial<Programme>): Student => {
  const student = newStudent();
  applyEvents(student, [programme(change)], new Set());
  return student;
};

const PATH_ONLY = { asked: false, target: 240 };
/** Four octaves together alone are asked for. */
export const ONLY_FOUR: Programme['stages'] = {
  ...DEFAULT_PROGRAMME.stages,
  'right.2': PATH_ONLY,
  'left.2': PATH_ONLY,
  'together.2': PATH_ONLY,
  'together.4': { asked: true, target: 240 },
  'together.contrary': PATH_ONLY,
};
