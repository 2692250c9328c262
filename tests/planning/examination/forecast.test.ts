/** The forecast against an exact enumeration: all draws, all outcomes, and the day by numerical integration. */
import { describe, expect, it } from 'vitest';
import { addDays } from '../../../shared/log/day';
import { chanceAt, chanceEven } from '../../../shared/learning/prediction';
import { density } from '../../../shared/learning/normal';
import { itemOf, type ItemId } from '../../../shared/music/deck';
import { chanceOf } from '../../../shared/planning/examination/chance';
import { defaultSettings } from '../../../shared/planning/examination/draw';
import {
  answerOf,
  type Candidate,
  forecastOf,
  type PassQuestion,
  questionOf,
} from '../../../shared/planning/examination/forecast';
import { replay } from '../../../shared/planning/student';
import { programme, run, START } from '../../learning/events';

/** All subsets of so many of the places 0 to n - 1. */
function subsets(n: number, count: number, from = 0): number[][] {
  if (count === 0) return [[]];
  return Array.from({ length: n - from }, (_, i) => from + i).flatMap((place) =>
    subsets(n, count - 1, place + 1).map((rest) => [place, ...rest]),
  );
}

/** By counting every outcome, with none of the program's own ways to count. */
function exactGiven({ candidates, count, toPass }: PassQuestion, shifts: readonly number[]) {
  const draws = subsets(candidates.length, count);
  const evens = candidates.map(({ margin, variance, group }) =>
    chanceAt(margin + shifts[group]!, variance),
  );
  return (sure: number | null): number => {
    let sum = 0;
    for (const draw of draws) {
      for (let outcome = 0; outcome < 2 ** count; outcome++) {
        const isEven = draw.map((_, i) => (outcome & (1 << i)) !== 0);
        if (isEven.filter(Boolean).length < toPass) continue;
        sum += draw.reduce((product, place, i) => {
          const even = place === sure ? 1 : evens[place]!;
          return product * (isEven[i]! ? even : 1 - even);
        }, 1);
      }
    }
    return sum / draws.length;
  };
}

/** Integrates over one standard normal that moves all items. */
function exactByDay(question: PassQuestion, spread: number) {
  const step = 0.1;
  const nodes = Array.from({ length: 121 }, (_, i) => -6 + step * i);
  const ofNodes = nodes.map((z) => ({
    weight: step * density(z),
    given: exactGiven(question, [spread * z]),
  }));
  return (sure: number | null): number =>
    ofNodes.reduce((sum, { weight, given }) => sum + weight * given(sure), 0);
}

const CANDIDATES: readonly Candidate[] = [0.4, -0.2, 0.1, -0.6, 0.3].map((margin) => ({
  margin,
  variance: 0.12,
  group: 0,
}));
const question = (change: Partial<PassQuestion>): PassQuestion => ({
  candidates: CANDIDATES,
  factor: [[0]],
  count: 3,
  toPass: 2,
  ...change,
});
/** With 10,000 draws the standard error of a chance is at most 0.005; the tests allow three of them. */
const DRAWS = 10_000;
const ALLOWED = 0.015;

describe('the chance to pass a drawn examination', () => {
  it.each([1, 2, 3])('of three, at least %i even, without a shared day', (toPass) => {
    const asked = question({ toPass });
    const exact = exactGiven(asked, [0]);
    const { chance, costs } = answerOf(asked, DRAWS, chanceOf(11));
    expect(Math.abs(chance - exact(null))).toBeLessThan(ALLOWED);
    costs.forEach((cost, place) => {
      expect(Math.abs(cost - (exact(place) - exact(null)))).toBeLessThan(ALLOWED);
    });
  });

  it.each([
    [0.07, 2],
    [0.07, 3],
    [0.4, 2],
    [0.4, 3],
  ])('with a day that moves all by %d octaves, at least %i even', (spread, toPass) => {
    const asked = question({ toPass, factor: [[spread]] });
    const exact = exactByDay(asked, spread);
    const { chance, costs } = answerOf(asked, DRAWS, chanceOf(12));
    expect(Math.abs(chance - exact(null))).toBeLessThan(ALLOWED);
    costs.forEach((cost, place) => {
      expect(Math.abs(cost - (exact(place) - exact(null)))).toBeLessThan(ALLOWED);
    });
  });

  it('a shared day makes all or nothing likelier than independent items would', () => {
    const all = question({ count: 5, toPass: 5 });
    const alone = exactGiven(all, [0])(null);
    const together = exactByDay({ ...all, factor: [[0.4]] }, 0.4)(null);
    expect(together).toBeGreaterThan(alone + 0.03);
    const sampled = answerOf({ ...all, factor: [[0.4]] }, DRAWS, chanceOf(13)).chance;
    expect(Math.abs(sampled - together)).toBeLessThan(ALLOWED);
  });

  it('two groups that move apart are two days', () => {
    const candidates = CANDIDATES.map((one, i) => ({ ...one, group: i % 2 }));
    const factor = [
      [0.3, 0],
      [0, 0.3],
    ];
    const asked = question({ candidates, factor, count: 5, toPass: 4 });
    const step = 0.25;
    const nodes = Array.from({ length: 41 }, (_, i) => -5 + step * i);
    let exact = 0;
    for (const a of nodes) {
      for (const b of nodes) {
        const given = exactGiven(asked, [0.3 * a, 0.3 * b])(null);
        exact += step * step * density(a) * density(b) * given;
      }
    }
    const { chance } = answerOf(asked, DRAWS, chanceOf(14));
    expect(Math.abs(chance - exact)).toBeLessThan(ALLOWED);
  });
});

describe('the forecast of a student', () => {
  const played = (['d.major-53', 'd.major-6', 'd.minor-53', 'c.dominant-7'] as const).flatMap(
    (id, i) => [
      run(`${id}.right.2`, i < 2 ? 4 : 1, 240, 0),
      run(`${id}.left.2`, i < 2 ? 3 : 1, 240, 1),
    ],
  );
  const student = replay([programme({ notes: ['c', 'd'] }), ...played]);
  const settings = defaultSettings(student.programme!);
  const day = addDays(START, 9);
  const { learner } = student;
  const options = { learner, programme: student.programme!, settings, day };

  it('leaves the chance of each item as readiness has it', () => {
    const only = { ...settings, notes: ['d'], chords: ['major-53'], count: 1, toPass: 1 } as const;
    for (const stage of ['right.2', 'left.2', 'together.4'] as const) {
      const asked = questionOf(learner, student.programme!, { ...only, stages: [stage] }, day);
      const { chance } = answerOf(asked, DRAWS, chanceOf(15));
      const item = itemOf(`d.major-53.${stage}`);
      expect(Math.abs(chance - chanceEven(learner, item, 240, day))).toBeLessThan(ALLOWED);
    }
  });

  it('is the same every time, and never more for a stricter examination', () => {
    const { chance, costly } = forecastOf(options);
    expect(forecastOf(options)).toEqual({ chance, costly });
    const chances = [1, 2, 3, 4, 5, 6].map(
      (toPass) => forecastOf({ ...options, settings: { ...settings, toPass } }).chance,
    );
    expect(chances).toEqual(chances.toSorted((a, b) => b - a));
    expect(
      forecastOf({ ...options, settings: { ...settings, tempoPercent: 70 } }).chance,
    ).toBeGreaterThan(chance);
  });

  it('finds the item that went wrong among two to cost more', () => {
    const two = { ...settings, notes: ['d'], stages: ['right.2'], count: 2, toPass: 2 } as const;
    const chords = ['major-53', 'minor-53'] as const;
    const { costly } = forecastOf({ ...options, settings: { ...two, chords } });
    const ids: readonly ItemId[] = costly.map(({ item }) => item.id);
    expect(ids).toEqual(['d.minor-53.right.2', 'd.major-53.right.2']);
    expect(costly[0]!.cost).toBeGreaterThan(costly[1]!.cost);
  });
});
