import { describe, expect, test } from 'vitest';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { itemOf } from '../../shared/music/deck';
import { fingersOfRun } from '../../shared/music/fingering/plan';
import { chosenPlan, fingeringFor } from '../../shared/planning/chosen-fingering';
import { fingeringChart, fingersText } from '../../shared/planning/fingering-chart';
import { replay } from '../../shared/planning/student';
import { event } from '../learning/events';

const OWN = { low: [1], pattern: [1, 3, 4], high: [5] } as const;
const set = event({ kind: 'programme', programme: DEFAULT_PROGRAMME }, 0);
const choice = (plan: typeof OWN | null, day: number) =>
  event({ kind: 'fingering', arpeggio: 'd.major-6', hand: 'right', plan }, day);

describe('a chosen fingering', () => {
  const student = replay([set, choice(OWN, 1)]);

  test.each([
    ['d.major-6.right.2', 2],
    ['d.major-6.together.4', 4],
  ] as const)('holds for every way of playing the arpeggio: %s', (id, octaves) => {
    const { fingers } = fingeringFor(student, itemOf(id), 'right')!;
    expect(fingers).toEqual(fingersOfRun(OWN, octaves));
  });

  test('leaves the other hand and the other chords alone', () => {
    const plain = replay([set]);
    for (const [id, hand] of [
      ['d.major-6.together.2', 'left'],
      ['d.minor-6.together.2', 'right'],
    ] as const) {
      expect(fingeringFor(student, itemOf(id), hand)).toEqual(
        fingeringFor(plain, itemOf(id), hand),
      );
    }
  });

  test('gives way to the computed one when it is taken back', () => {
    const back = replay([set, choice(OWN, 1), choice(null, 2)]);
    expect(chosenPlan(back, itemOf('d.major-6.right.2'), 'right')).toBeNull();
  });

  test('no hand that rests has fingers', () => {
    expect(fingeringFor(student, itemOf('d.major-6.right.2'), 'left')).toBeNull();
  });
});

/** Of the right hand's intervals within a position, in semitones. */
function widestFor(span: number | null): number {
  const student = replay([set, event({ kind: 'span', semitones: span }, 1)]);
  const { positions } = fingeringFor(student, itemOf('c.minor-64.right.2'), 'right')!;
  const steps = positions.flatMap(({ notes }) =>
    notes.slice(1).map((note, i) => note.key - notes[i]!.key),
  );
  return Math.max(...steps);
}

test('a smaller hand may get another fingering, and never a wider stretch', () => {
  expect(widestFor(8)).toBeLessThanOrEqual(widestFor(null));
});

describe('the chart', () => {
  test('has eleven rows for each starting note of the programme, and marks what was chosen', () => {
    const student = replay([set, choice(OWN, 1)]);
    const charts = fingeringChart(student, DEFAULT_PROGRAMME);
    expect(charts.map(({ rows }) => rows.length)).toEqual(DEFAULT_PROGRAMME.notes.map(() => 11));
    const chosen = charts.flatMap(({ rows }) => rows).filter(({ right }) => right.isChosen);
    expect(chosen.map(({ item }) => item.arpeggio)).toEqual(['d.major-6']);
    expect(fingersText(chosen[0]!.right.fingering)).toBe('134 1345');
  });

  // C major in root position: 1235 and 5421, the table of R. Kelley and others in tests/reference/fingering-triads.
  test('separates the positions', () => {
    const [first] = fingeringChart(replay([set]), { ...DEFAULT_PROGRAMME, notes: ['c'] });
    const { right, left } = first!.rows[0]!;
    expect([fingersText(right.fingering), fingersText(left.fingering)]).toEqual([
      '123 1235',
      '5421 421',
    ]);
  });
});
