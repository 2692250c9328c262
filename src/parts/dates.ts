/** Days in words. Formatted as days, without a time zone: a Day is already the day where the person is. */
import type { Day } from '../../shared/log/events';

const format = (options: Intl.DateTimeFormatOptions) =>
  new Intl.DateTimeFormat('en-GB', { ...options, timeZone: 'UTC' });

const long = format({ weekday: 'long', day: 'numeric', month: 'long' });
const withYear = format({ day: 'numeric', month: 'long', year: 'numeric' });

/** "Wednesday 25 November". */
export const dayText = (day: Day): string => long.format(new Date(`${day}T00:00Z`));

/** "25 November 2026". */
export const dateText = (day: Day): string => withYear.format(new Date(`${day}T00:00Z`));

/** "1 minute", "12 minutes": rounded to whole minutes, at least one. */
export function minutesText(seconds: number): string {
  const minutes = Math.max(1, Math.round(seconds / 60));
  return minutes === 1 ? '1 minute' : `${minutes} minutes`;
}
