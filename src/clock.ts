/** The one place where the app reads the clock and the time zone. */
import type { Day } from '../shared/log/events';

/** Milliseconds since 1970 UTC. */
export const now = (): number => Date.now();

/** The calendar day of a moment where the device is. */
export function dayOf(at: number): Day {
  const date = new Date(at);
  const month = String(date.getMonth() + 1).padStart(2, '0');
  const day = String(date.getDate()).padStart(2, '0');
  return `${date.getFullYear()}-${month}-${day}`;
}
