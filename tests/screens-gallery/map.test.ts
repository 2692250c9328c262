import { describe, expect, it } from 'vitest';
import { readinessOf } from '../../shared/learning/readiness';
import { cellsOf, frontOf, sharesOf, targetOf } from '../../shared/planning/map';
import { replay } from '../../shared/planning/student';
import { percent } from '../../src/parts/percent-text';
import { shadeOf } from '../../src/screens/map/shade';
import { event, programme, run, START } from '../learning/events';

const student = replay([
  programme({ notes: ['d', 'eb'] }),
  run('d.major-53.right.2', 3, 160, 0),
  run('d.major-53.right.2', 4, 160, 1),
  event({ kind: 'aside', item: 'd.minor-53.right.2', aside: true }, 1),
]);
const plan = student.programme!;
const cells = (way: Parameters<typeof cellsOf>[2]['way']) =>
  cellsOf(student, plan, { note: 'd', way, day: START });

describe('a cell of the map', () => {
  it('knows what was played and what is set aside', () => {
    expect(cells('right.2').map((cell) => cell.isPlayed)).toEqual([true, ...Array(10).fill(false)]);
    expect(cells('right.2').findIndex((cell) => cell.isAside)).toBe(1);
  });

  it('is open up to the stage that its own arpeggio has come to', () => {
    expect(cells('left.2').map((cell) => cell.isOpen)).toEqual([true, ...Array(10).fill(false)]);
    expect(cells('together.2').some((cell) => cell.isOpen)).toBe(false);
  });

  it('is always open off the path', () => {
    expect(cells('left.4').every((cell) => cell.isOpen)).toBe(true);
  });
});

describe('the map', () => {
  it('gives a stage the readiness that the report gives it', () => {
    const { byStage } = readinessOf(student.learner, plan, START);
    const shares = sharesOf(student, plan, START);
    for (const [stage, share] of byStage) expect(shares.get(stage)).toBeCloseTo(share, 12);
  });

  it('measures single hands over four octaves by what is asked of both', () => {
    const stages = { ...plan.stages, 'together.4': { asked: true, target: 200 } };
    expect(targetOf({ ...plan, stages }, 'right.4')).toBe(200);
    expect(targetOf({ ...plan, stages }, 'right.2')).toBe(240);
  });

  it('opens at the highest stage that has been played, or at the one reached', () => {
    expect(frontOf(student, plan)).toBe('right.2');
    expect(frontOf(student, { ...plan, notes: ['eb'], reached: 'together.2' })).toBe('together.2');
  });
});

describe('shades and numbers', () => {
  it('are five shades, a fifth of the scale each', () => {
    expect([0, 0.199, 0.2, 0.4, 0.6, 0.799, 0.8, 1].map(shadeOf)).toEqual([0, 0, 1, 2, 3, 3, 4, 4]);
  });

  it('never call an estimate certain', () => {
    expect([0, 0.004, 0.5, 0.996, 1].map(percent)).toEqual([1, 1, 50, 99, 99]);
  });
});
