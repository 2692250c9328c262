import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { reportCsv, type ReportInput } from '../../shared/formats/report-csv';
import { reachOf } from '../../shared/learning/prediction';
import { readinessOf } from '../../shared/learning/readiness';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { itemOf } from '../../shared/music/deck';
import { replay } from '../../shared/planning/student';
import { event, programme, run } from '../learning/events';

const PROGRAMME = { ...DEFAULT_PROGRAMME, notes: ['d', 'eb'], date: '2026-02-01' } as const;
const PLAYED = 'd.minor-64.right.2';
const student = replay([
  programme(PROGRAMME),
  run(PLAYED, 2, 160, 1),
  run(PLAYED, 3, 160, 3),
  event({ kind: 'aside', item: 'eb.dominant-65.left.2', aside: true }, 4),
]);
const today = '2026-01-10';
const input: ReportInput = { student, programme: PROGRAMME, today, nameStyle: 'letters' };

type Row = Readonly<Record<string, string>>;
const read = (change: Partial<ReportInput> = {}): readonly Row[] =>
  parse(reportCsv({ ...input, ...change }), { columns: true, bom: true, recordDelimiter: '\r\n' });

describe('the readiness report as CSV', () => {
  it('has one row for each item of the programme, in the order of the deck', () => {
    const rows = read();
    expect(rows).toHaveLength(2 * 11 * 4);
    expect(rows[0]).toMatchObject({ 'starting note': 'D', hands: 'right hand' });
    expect(rows[11]!['starting note']).toBe('D♯/E♭');
    expect(rows.at(-1)).toMatchObject({
      chord: 'diminished seventh',
      hands: 'hands together',
      motion: 'four octaves',
    });
  });

  it('tells of a played item all that its columns promise', () => {
    const reach = reachOf(student.learner, itemOf(PLAYED), today).tempo;
    const { chances } = readinessOf(student.learner, PROGRAMME, '2026-02-01');
    expect(read()[5]).toEqual({
      'starting note': 'D',
      chord: 'minor triad, second inversion',
      figures: '6 4',
      hands: 'right hand',
      motion: 'two octaves',
      'target mark (4 notes a beat)': '60',
      'reach mark now (4 notes a beat)': String(Math.round(reach / 4)),
      'chance of even on 2026-02-01 (per cent)': String(Math.round(chances.get(PLAYED)! * 100)),
      'last run': '2026-01-08',
      'last fluency': 'even',
      'set aside': 'no',
    });
  });

  it('leaves empty what there is not, and marks what is set aside', () => {
    const aside = read().find((row) => row['set aside'] === 'yes');
    expect(aside).toMatchObject({
      chord: 'dominant seventh, first inversion',
      hands: 'left hand',
      'last run': '',
      'last fluency': '',
    });
  });

  it.each([null, '2026-01-09'])('speaks of today where the date is %s', (date) => {
    const columns = Object.keys(read({ programme: { ...PROGRAMME, date } })[0]!);
    expect(columns).toContain('chance of even on 2026-01-10 (per cent)');
  });

  it('writes note names and marks as the programme and the person have them', () => {
    const [row] = read({ nameStyle: 'syllables', programme: { ...PROGRAMME, grouping: 3 } });
    expect(row).toMatchObject({ 'starting note': 'Re', 'target mark (3 notes a beat)': '80' });
  });
});
