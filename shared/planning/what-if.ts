/**
 * What other minutes or days would mean for the forecast. Gains are taken to grow with the time, as in the report. Eight
 * invented students of each family, uniform and uneven: 30 minutes in place of 20 took 0.67 to 0.75 times the days (0.67
 * by this rule), 10 minutes 1.7 to 2.1 times (2), and five days a week in place of six 1.16 to 1.23 times (1.2).
 */
import type { Day } from '../log/events';
import type { Programme } from '../log/programme';
import { type Forecast, programmeForecast, paceWindowOf } from './forecast';
import type { Student } from './student';

/** Minutes a week. */
const weekly = ({ minutes, daysPerWeek }: Programme): number => minutes * daysPerWeek;

/**
 * The forecast of all stages with another programme than the one that holds; null without one, and where the starting
 * notes differ, as the pace is known only for those that were practised.
 */
export function forecastWith(student: Student, changed: Programme, today: Day): Forecast | null {
  const { programme } = student;
  if (programme === null || programme.notes.join() !== changed.notes.join()) return null;
  const pace = weekly(changed) / weekly(programme);
  return programmeForecast(changed, { ...paceWindowOf(student, changed, today), pace });
}
