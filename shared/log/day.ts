/** Calendar days as whole numbers, so that no time zone or clock change can reach the model. */
import type { Day } from './events';

const MS_PER_DAY = 86_400_000;

/** Days since 1970-01-01: `dayNumber("1970-01-02")` is 1. Counts calendar days, never hours. */
export const dayNumber = (day: Day): number =>
  Date.UTC(Number(day.slice(0, 4)), Number(day.slice(5, 7)) - 1, Number(day.slice(8, 10))) /
  MS_PER_DAY;

export const dayOfNumber = (number: number): Day =>
  new Date(number * MS_PER_DAY).toISOString().slice(0, 10);

/** Calendar days from one day to a later one; negative if it is earlier. */
export const daysBetween = (from: Day, to: Day): number => dayNumber(to) - dayNumber(from);

/** The day a number of days later. */
export const addDays = (day: Day, days: number): Day => dayOfNumber(dayNumber(day) + days);
