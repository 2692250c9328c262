/** The dates of a programme, and what they ask of a day: rules DATES and TAPER of RULES.md. */
import { dayNumber, daysBetween } from '../log/day';
import type { Day } from '../log/events';
import type { Programme } from '../log/programme';

/** Without a date, what a run is worth is measured four weeks ahead. */
const DAYS_AHEAD = 28;

/**
 * Day numbers on which a run of today is judged: the next date, and the last if that is another, so that a lesson does
 * not make the examination forgotten.
 */
export function datesAhead(programme: Programme, day: Day): readonly number[] {
  const today = dayNumber(day);
  const ahead = [programme.date, ...(programme.furtherDates ?? []).map((one) => one.day)]
    .flatMap((date) => (date === null ? [] : dayNumber(date)))
    .filter((date) => date > today)
    .toSorted((a, b) => a - b);
  const [next = today + DAYS_AHEAD] = ahead;
  const last = ahead.at(-1) ?? next;
  return last === next ? [next] : [next, last];
}

/** The date, and so many days before it, are its eve. */
const EVE = 7;

/** Days until the date of the programme, if it is in its eve: 6 to 0; null otherwise. */
export function daysOfEve({ date }: Programme, day: Day): number | null {
  const days = date === null ? -1 : daysBetween(day, date);
  return days >= 0 && days < EVE ? days : null;
}

/** Of the minutes of an ordinary day, by the days left: little the day before and on the day itself (Horvath; the rest P). */
const TAPER = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9] as const;
const SHORTEST_DAY = 5;

/** Minutes that a day should have if nobody wishes otherwise. */
export function minutesOn(programme: Programme, day: Day): number {
  const { minutes } = programme;
  const days = daysOfEve(programme, day);
  if (days === null) return minutes;
  return Math.min(minutes, Math.max(SHORTEST_DAY, Math.round(TAPER[days]! * minutes)));
}
