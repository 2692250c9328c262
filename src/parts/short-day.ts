import type { Day } from '../../shared/log/events';

const format = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  timeZone: 'UTC',
});

/** "25 Nov", where the year is plain; never broken into two lines. */
export const shortDay = (day: Day): string =>
  format.format(new Date(`${day}T00:00Z`)).replace(' ', '\u00A0');
