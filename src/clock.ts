/** The one clock of the page; everything below is given the time. */
import type { Day } from '../shared/log/events';

/** Milliseconds since 1970 UTC. */
export const now = (): number => Date.now();

const twoDigits = (number: number): string => String(number).padStart(2, '0');

/** The calendar day where the person is: "2026-11-25". */
export function dayOf(at: number): Day {
  const date = new Date(at);
  const parts = [date.getFullYear(), twoDigits(date.getMonth() + 1), twoDigits(date.getDate())];
  return parts.join('-');
}
