/** All students as a table: one row for each, in the order given. */
import { addDays, daysBetween } from '../log/day';
import type { Day } from '../log/events';
import { LATELY, type StudioFigures } from '../planning/studio';
import { type Cell, csvOf } from './csv';

export interface StudioRow {
  readonly name: string;
  readonly figures: StudioFigures;
  /** Why somebody should look: "2 remarks"; empty if nothing waits. */
  readonly waiting: string;
}

const percent = (share: number | null): Cell => (share === null ? null : Math.round(100 * share));

/** CSV with a byte order mark. Readiness in per cent; practice from the first note to the last of each run. */
export function studioCsv(rows: readonly StudioRow[], today: Day): string {
  const lately = `since ${addDays(today, 1 - LATELY)}`;
  const header = [
    'student',
    `readiness on ${today} (per cent)`,
    'date of the examination',
    'days left',
    'readiness on that date (per cent)',
    'last practice',
    `days of practice ${lately}`,
    `minutes played ${lately}`,
    'waiting',
  ];
  return csvOf(
    header,
    rows.map(({ name, figures, waiting }) => [
      name,
      percent(figures.now),
      figures.date,
      figures.date === null ? null : daysBetween(today, figures.date),
      percent(figures.onDate),
      figures.lastPractice,
      figures.days,
      Math.round(figures.seconds / 60),
      waiting,
    ]),
    { bom: true },
  );
}
