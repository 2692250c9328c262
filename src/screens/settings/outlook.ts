/** What the minutes and days of a programme that is being set would lead to, in one line. */
import { addDays } from '../../../shared/log/day';
import type { Day } from '../../../shared/log/events';
import type { Programme } from '../../../shared/log/programme';
import { forecastWith } from '../../../shared/planning/what-if';
import type { Student } from '../../../shared/planning/student';
import { dateText } from '../../parts/dates';

/** "With this time all of it is ready about 3 May 2027; as it was, about 1 July 2027."; null where nothing can be said. */
export function outlookText(student: Student, changed: Programme, today: Day): string | null {
  const after = dateOf(student, changed, today);
  if (after === null) return null;
  const before = student.programme && dateOf(student, student.programme, today);
  const other = before === null || before === after ? '' : `; as it was, ${before}`;
  return `With this time all of it is ready ${after}${other}.`;
}

function dateOf(student: Student, programme: Programme, today: Day): string | null {
  const forecast = forecastWith(student, programme, today);
  return forecast?.kind === 'expected' ? `about ${dateText(addDays(today, forecast.days))}` : null;
}
