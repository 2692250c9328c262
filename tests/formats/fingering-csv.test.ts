import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { fingeringCsv } from '../../shared/formats/fingering-csv';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { STARTING_NOTES } from '../../shared/music/deck';
import { fingeringChart } from '../../shared/planning/fingering-chart';
import { replay } from '../../shared/planning/student';
import { event } from '../learning/events';

const programme = { ...DEFAULT_PROGRAMME, notes: STARTING_NOTES };
const student = replay([
  event({ kind: 'programme', programme }, 0),
  event(
    {
      kind: 'fingering',
      arpeggio: 'c.major-53',
      hand: 'left',
      plan: { low: [5], pattern: [1, 3, 2], high: [1] },
    },
    1,
  ),
]);

// RFC 4180, read back by csv-parse, which shares nothing with the writer.
test('a row for each hand of each of the 132 arpeggios', () => {
  const text = fingeringCsv(fingeringChart(student, programme), {
    nameStyle: 'german',
    blackNames: {},
  });
  const rows = parse(text, { bom: true, columns: true }) as Record<string, string>[];
  expect(rows).toHaveLength(264);
  expect(rows[1]).toEqual({
    'bottom note': 'C',
    chord: 'major triad, root position',
    figures: '5/3',
    notes: 'C E G',
    hand: 'left hand',
    'fingers up over two octaves': '5321 321',
    'chosen by': 'player',
  });
  expect(rows.filter((row) => row['chosen by'] === 'player')).toHaveLength(1);
  expect(rows.every((row) => /^[1-5 ]+$/.test(row['fingers up over two octaves']!))).toBe(true);
  expect(new Set(rows.map((row) => row['bottom note']))).toContain('H');
});
