/**
 * Days in words. The names stand here because the first screen needs them: a formatter of Intl's or of date-fns would
 * be the slowest part of opening the app.
 */
import { parseISO } from 'date-fns';
import type { Day } from '../../shared/log/events';

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

function partsOf(day: Day) {
  const date = parseISO(day);
  return {
    weekday: WEEKDAYS[date.getDay()]!,
    date: date.getDate(),
    month: MONTHS[date.getMonth()]!,
    year: date.getFullYear(),
  };
}

/** "Wednesday 25 November". */
export function dayText(day: Day): string {
  const { weekday, date, month } = partsOf(day);
  return `${weekday} ${date} ${month}`;
}

/** "25 November 2026". */
export function dateText(day: Day): string {
  const { date, month, year } = partsOf(day);
  return `${date} ${month} ${year}`;
}

/** "25 Nov", where the year is plain; never broken into two lines. */
export function shortDay(day: Day): string {
  const { date, month } = partsOf(day);
  return `${date}\u00A0${month.slice(0, 3)}`;
}

/** "1 minute", "12 minutes": rounded to whole minutes, at least one. */
export function minutesText(seconds: number): string {
  const minutes = Math.max(1, Math.round(seconds / 60));
  return minutes === 1 ? '1 minute' : `${minutes} minutes`;
}
