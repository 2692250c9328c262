/** What the report says of time and of takes: reach against target week by week, and joins that were heard to wait. */
import { describe, expect, it } from 'vitest';
import { addDays } from '../../shared/log/day';
import type { LogEvent, RunEvent } from '../../shared/log/events';
import type { HandTake } from '../../shared/log/run-take';
import { itemOf } from '../../shared/music/deck';
import { reportOf } from '../../shared/planning/report';
import { replay } from '../../shared/planning/student';
import { withHeard } from '../../shared/planning/weak-joins';
import { joinsPart } from '../../src/screens/report/work-parts';
import { progressPart } from '../../src/screens/report/forecast-parts';
import { event, programme, run, START } from '../learning/events';
import { takeWith } from '../learning/takes';
import { fullStudent, TODAY } from './full-student';

describe('reach over time', () => {
  const student = fullStudent();
  const report = reportOf(student, student.programme!, TODAY);

  it('has a point a week and one of today, for each stage that is asked', () => {
    expect(report.progress).toHaveLength(5);
    for (const { points, target, stage } of report.progress) {
      expect(points.length).toBeGreaterThan(10);
      expect(points.map(({ day }) => day)).toEqual(points.map(({ day }) => day).toSorted());
      expect(points.at(-1)!.day).toBe(TODAY);
      expect(target).toBe(student.programme!.stages[stage].target);
    }
  });

  it('is what nine items in ten reach, so less than the middle one does', () => {
    report.progress.forEach(({ points }, i) => {
      expect(points.at(-1)!.tempo).toBeLessThanOrEqual(report.stages[i]!.reach);
    });
  });

  it('is drawn with the numbers that the table behind it has', () => {
    const [block] = progressPart(report, 4)!.blocks;
    expect(block).toMatchObject({ kind: 'pictures', pictures: { length: 5 } });
    if (block?.kind !== 'pictures') return;
    block.pictures.forEach(({ marks }, i) => {
      const row = block.table!.rows[i]!;
      const words = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
      // The target, then the first and the last, as the row ends with the target and begins after the name.
      expect(words.slice(0, 3)).toEqual([row.at(-1), row[1], row.at(-2)]);
      const [, target, reach] = marks.flatMap((mark) => (mark.kind === 'path' ? [mark] : []));
      expect([target!.look, reach!.look]).toEqual(['dashed', 'strong']);
      expect(reach!.points).toHaveLength(report.progress[i]!.points.length);
    });
  });

  it('is not there before there is a week to compare with', () => {
    const early = replay([programme({ notes: ['d'] })]);
    expect(progressPart(reportOf(early, early.programme!, START), 4)).toBeNull();
  });
});

const waits = (late: number): HandTake => ({
  // C major, right hand, two octaves: the thumb goes under to the fourth note.
  waits: Array.from({ length: 13 }, (_, step) => (step === 3 ? late : step === 0 ? null : 0)),
  unevenness: 9,
  overlap: 3,
  thumbLate: null,
  loudness: 4,
  thumbAccent: null,
});
describe('the joins of the report', () => {
  const heard = event(
    {
      kind: 'run',
      item: 'c.major-53.right.2',
      tempo: 200,
      fluency: 2,
      pedal: false,
      judge: 'player',
      entry: null,
      take: takeWith({ right: waits(90), left: null }),
    },
    1,
  ) as RunEvent & LogEvent;
  const student = replay([programme({ notes: ['c'] }), run('c.minor-6.right.2', 1, 200, 1), heard]);
  const today = addDays(START, 2);
  const report = reportOf(student, student.programme!, today);

  it('are by ratings where nothing was heard', () => {
    expect(withHeard(report.joins, student, { runs: [], today })).toEqual(report.joins);
    expect(report.joins[0]).toMatchObject({
      item: { id: 'c.minor-6.right.2' },
      evidence: { kind: 'rated', fluency: 1 },
    });
  });

  it('have what was heard first, with the wait, and each once', () => {
    const joins = withHeard(report.joins, student, { runs: [heard], today });
    expect(joins[0]).toMatchObject({
      item: itemOf('c.major-53.right.2'),
      join: { id: 'c.major-53.right.join.3' },
      evidence: { kind: 'heard', wait: 90, takes: 1 },
    });
    expect(new Set(joins.map(({ join }) => join.id)).size).toBe(joins.length);
    expect(joinsPart(student, { ...report, joins }).blocks[0]).toMatchObject({
      items: expect.arrayContaining([
        expect.stringMatching(
          /^C, major 5\/3 \(right 2 oct\.\): right hand, up: thumb under to C; heard to wait 90 ms in one run/,
        ),
      ]) as unknown,
    });
  });
});
