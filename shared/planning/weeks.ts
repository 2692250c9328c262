/** Weeks as ISO 8601 counts them: from Monday, the first of a year being the one with its first Thursday. */
import { formatISO, parseISO, startOfISOWeek } from 'date-fns';
import { addDays } from '../log/day';
import type { Day } from '../log/events';
import type { Work } from './student';

/** The Monday of a day's week: that of "2026-11-25" is "2026-11-23". */
export const mondayOf = (day: Day): Day =>
  formatISO(startOfISOWeek(parseISO(day)), { representation: 'date' });

export interface Week extends Work {
  readonly monday: Day;
  /** Days with at least one run. */
  readonly days: number;
}

/** The work of the last weeks, oldest first, the week of `today` last; weeks without work are there too. */
export function weeksOf(work: ReadonlyMap<Day, Work>, today: Day, count: number): readonly Week[] {
  const thisMonday = mondayOf(today);
  return Array.from({ length: count }, (_, i): Week => {
    const monday = addDays(thisMonday, 7 * (i + 1 - count));
    const done = Array.from({ length: 7 }, (__, day) => work.get(addDays(monday, day))).filter(
      (one) => one !== undefined && one.runs > 0,
    ) as readonly Work[];
    return {
      monday,
      days: done.length,
      runs: done.reduce((sum, one) => sum + one.runs, 0),
      seconds: done.reduce((sum, one) => sum + one.seconds, 0),
    };
  });
}
