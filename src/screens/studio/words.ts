/** What stands in the overview of all students. */
import { daysBetween } from '../../../shared/log/day';
import type { Day } from '../../../shared/log/events';
import { dayOf } from '../../clock';
import { dateText, shortDay } from '../../parts/dates';
import type { Overview } from '../../store/store';

/** Days after which a file is told to be old. */
const FORTNIGHT = 14;
/** Days that a student elsewhere may be ahead of the teacher, as in shared/planning/studio.ts. */
const AHEAD = 2;

const plural = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

const dayAndMonth = (day: Day, today: Day): string =>
  day.slice(0, 4) === today.slice(0, 4) ? shortDay(day) : `${shortDay(day)} ${day.slice(0, 4)}`;

/** "today", "yesterday", "5 days ago", "12 Oct": by the calendar of where the student was. */
export function practiceText(day: Day | null, today: Day): string {
  if (day === null) return 'not yet';
  const days = daysBetween(day, today);
  if (days < -AHEAD) return dateText(day);
  if (days <= 0) return 'today';
  if (days === 1) return 'yesterday';
  return days <= FORTNIGHT ? `${days} days ago` : dayAndMonth(day, today);
}

/** "12 Jun 2027" and "in 199 days". */
export function examinationText(date: Day, today: Day): readonly [date: string, left: string] {
  const left = daysBetween(today, date);
  const words = left < 0 ? 'over' : left === 0 ? 'today' : left === 1 ? 'tomorrow' : null;
  return [dayAndMonth(date, today), words ?? `in ${left} days`];
}

/** Why somebody should look at this student, a reason each. */
export function waitingTexts(overview: Overview, today: Day): readonly string[] {
  const { figures, cameAt, givenOn } = overview;
  const since = (day: Day | null): number => (day === null ? 0 : daysBetween(day, today));
  const came = since(cameAt === null ? null : dayOf(cameAt));
  const given = since(givenOn);
  return [
    ...(figures.now === null ? ['no programme'] : []),
    ...(figures.remarks > 0 ? [plural(figures.remarks, 'remark')] : []),
    ...(came > FORTNIGHT ? [`last file ${came} days old`] : []),
    ...(given > FORTNIGHT ? [`handed over ${given} days ago`] : []),
  ];
}
