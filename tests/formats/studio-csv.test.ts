import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { studioCsv, type StudioRow } from '../../shared/formats/studio-csv';
import type { StudioFigures } from '../../shared/planning/studio';

const FIGURES: StudioFigures = {
  now: 0.714,
  onDate: 0.626,
  date: '2026-12-12',
  lastPractice: '2026-11-24',
  days: 12,
  seconds: 14_390,
  remarks: 2,
};
const NOTHING: StudioFigures = {
  now: null,
  onDate: null,
  date: null,
  lastPractice: null,
  days: 0,
  seconds: 0,
  remarks: 0,
};

/** Read back by another parser than the one that wrote it. */
const read = (rows: readonly StudioRow[]): readonly Readonly<Record<string, string>>[] =>
  parse(studioCsv(rows, '2026-11-25'), { columns: true, bom: true, recordDelimiter: '\r\n' });

/** The days left until a date. */
const left = (date: string, today: string): string => {
  const rows = [{ name: 'Ada', figures: { ...FIGURES, date }, waiting: '' }];
  const [row] = parse(studioCsv(rows, today), { columns: true, bom: true }) as readonly {
    readonly 'days left': string;
  }[];
  return row!['days left'];
};

describe('all students as CSV', () => {
  it('has a row for each in the order given, with all that its columns promise', () => {
    const rows = read([
      { name: 'Ada', figures: FIGURES, waiting: '2 remarks' },
      { name: 'Ben', figures: NOTHING, waiting: '' },
    ]);
    expect(rows).toEqual([
      {
        student: 'Ada',
        'readiness on 2026-11-25 (per cent)': '71',
        'date of the examination': '2026-12-12',
        'days left': '17',
        'readiness on that date (per cent)': '63',
        'last practice': '2026-11-24',
        'days of practice since 2026-10-29': '12',
        'minutes played since 2026-10-29': '240',
        waiting: '2 remarks',
      },
      {
        student: 'Ben',
        'readiness on 2026-11-25 (per cent)': '',
        'date of the examination': '',
        'days left': '',
        'readiness on that date (per cent)': '',
        'last practice': '',
        'days of practice since 2026-10-29': '0',
        'minutes played since 2026-10-29': '0',
        waiting: '',
      },
    ]);
  });

  it.each(['=HYPERLINK("http://x")', '+Ada', ' @SUM(A1)', '-1', '\t=1', 'Ada\n=1'])(
    'a student called %j is no formula, and is one cell',
    (name) => {
      const [row, ...others] = read([{ name, figures: NOTHING, waiting: '' }]);
      expect(others).toEqual([]);
      for (const line of row!['student']!.split('\n')) expect(line).not.toMatch(/^\s*[=+\-@]/);
      expect(row!['student']!.replaceAll("'", '')).toBe(name);
    },
  );

  it('counts days left over a change of the clock by the calendar, and below nought when it is over', () => {
    // Clocks of Europe go forward on 29 March 2026.
    expect(left('2026-03-30', '2026-03-28')).toBe('2');
    expect(left('2026-11-24', '2026-11-25')).toBe('-1');
  });
});
