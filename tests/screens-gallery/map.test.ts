import { describe, expect, it } from 'vitest';
import { type Programme, targetFor } from '../../shared/log/programme';
import type { StartingNote, Way } from '../../shared/music/deck';
import { readinessOf } from '../../shared/learning/readiness';
import { cellsOf, frontOf, sharesOf } from '../../shared/planning/map';
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
    const asked = (way: Way) => targetFor({ ...plan, stages }, { way, chord: 'major-53' });
    expect([asked('right.4'), asked('right.2')]).toEqual([200, 240]);
  });

  it('opens at the highest stage that has been played, or at the one reached', () => {
    expect(frontOf(student, plan)).toBe('right.2');
    expect(frontOf(student, { ...plan, notes: ['eb'], reached: 'together.2' })).toBe('together.2');
  });
});

describe('chords that are asked for in some stages only', () => {
  const ROOT = ['major-53', 'minor-53'] as const;
  const { stages } = plan;
  const restricted: Programme = {
    ...plan,
    stages: {
      ...stages,
      'right.2': { ...stages['right.2'], chords: ROOT },
      'left.2': { ...stages['left.2'], chords: [...ROOT, 'dominant-7'] },
      'together.2': { ...stages['together.2'], asked: false },
      'together.4': { ...stages['together.4'], asked: false },
    },
  };
  const onTheWay = (way: Parameters<typeof cellsOf>[2]['way']) =>
    cellsOf(student, restricted, { note: 'd', way, day: START })
      .filter((cell) => cell.isOnTheWay)
      .map((cell) => cell.item.chord);

  it('are told apart, with those that lead to a higher stage', () => {
    expect(onTheWay('right.2')).toEqual([...ROOT, 'dominant-7']);
    expect(onTheWay('left.2')).toEqual([...ROOT, 'dominant-7']);
    expect(onTheWay('together.4')).toEqual([]);
    expect(onTheWay('left.4')).toEqual([]);
    expect(cells('together.4').every((cell) => cell.isOnTheWay)).toBe(true);
    expect(cells('together.contrary').some((cell) => cell.isOnTheWay)).toBe(false);
  });

  it('alone count in the share of a stage, as in the report', () => {
    const { byStage } = readinessOf(student.learner, restricted, START);
    const shares = sharesOf(student, restricted, START);
    expect([...shares.keys()]).toEqual(['right.2', 'left.2']);
    for (const [stage, share] of byStage) expect(shares.get(stage)).toBeCloseTo(share, 12);
  });

  it('where a stage is only a step on the way, all that lead on count', () => {
    const skipping = {
      ...restricted,
      stages: { ...restricted.stages, 'right.2': { ...stages['right.2'], asked: false } },
    };
    const chances = ['d', 'eb'].flatMap((note) =>
      cellsOf(student, skipping, { note: note as StartingNote, way: 'right.2', day: START })
        .filter(({ item }) => [...ROOT, 'dominant-7'].includes(item.chord))
        .map(({ chance }) => chance),
    );
    expect(chances).toHaveLength(6);
    const mean = chances.reduce((sum, chance) => sum + chance, 0) / 6;
    expect(sharesOf(student, skipping, START).get('right.2')).toBeCloseTo(mean, 12);
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
