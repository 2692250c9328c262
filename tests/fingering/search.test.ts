/** The search against trying everything: the same plans in the same order, and the same cost as the explanation's. */
import { describe, expect, it } from 'vitest';
import { costOf } from '../../shared/music/fingering/cost';
import { type Line, lineOf } from '../../shared/music/fingering/line';
import { Queue } from '../../shared/music/fingering/queue';
import { plansInOrder } from '../../shared/music/fingering/search';
import type { Finger, FingerPlan } from '../../shared/music/fingering/types';
import { fc } from '../learning/property';
import { anyQuestion } from './questions';

const follows = (from: Finger, to: Finger): boolean => (to === 1 ? from !== 1 : to > from);

/** All rows of so many fingers of which each can follow the one before. */
function rows(length: number, choices: readonly Finger[]): readonly (readonly Finger[])[] {
  if (length === 0) return [[]];
  return rows(length - 1, choices).flatMap((row) =>
    choices
      .filter((finger) => row.length === 0 || follows(row.at(-1)!, finger))
      .map((finger) => [...row, finger]),
  );
}

/** Every plan of a line that the rules of the game allow. */
function everyPlan(line: Line): readonly FingerPlan[] {
  const patterns = rows(line.size, [1, 2, 3, 4]).filter((row) => follows(row.at(-1)!, row[0]!));
  return patterns.flatMap((pattern) => {
    const firstThumb = pattern.indexOf(1);
    const free = line.start === 'low' ? firstThumb : Math.min(1, firstThumb);
    const lows = rows(free, [2, 3, 4])
      .map((row) => [...row, ...pattern.slice(free)])
      .filter((row) => row.every((finger, i) => i === 0 || follows(row[i - 1]!, finger)));
    const tops = ([1, 2, 3, 4, 5] as const).filter(
      (top) => follows(pattern.at(-1)!, top) && (top !== 1 || pattern[0] === 1),
    );
    return lows.flatMap((low) => tops.map((top) => ({ low, pattern, high: [top] })));
  });
}

describe('the search', () => {
  it('finds the cheapest plans of all, in order', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const line = lineOf(question, Math.max(2, question.octaves));
        const costs = everyPlan(line).map((plan) => costOf(line, plan).total);
        const expected = costs.toSorted((a, b) => a - b).slice(0, 12);
        const found = [...plansInOrder(line, 12)].map(({ cost }) => cost);
        expect(found).toHaveLength(expected.length);
        for (const [i, cost] of found.entries()) expect(cost).toBeCloseTo(expected[i]!, 6);
      }),
      { numRuns: 50 },
    );
  });

  it('has no plan twice, and adds up to the cost that the explanation gives', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const line = lineOf(question, Math.max(2, question.octaves));
        const found = [...plansInOrder(line, 12)];
        expect(new Set(found.map(({ plan }) => JSON.stringify(plan))).size).toBe(found.length);
        for (const { plan, cost } of found) expect(costOf(line, plan).total).toBeCloseTo(cost, 6);
      }),
    );
  });

  it('copes with twelve notes to the octave', () => {
    const keys = Array.from({ length: 12 }, (_, i) => 60 + i);
    const found = [...plansInOrder(lineOf({ keys, hand: 'right', octaves: 2 }), 6)];
    expect(found).toHaveLength(6);
  });
});

describe('the queue', () => {
  it('hands out the cheapest first', () => {
    fc.assert(
      fc.property(fc.array(fc.integer()), (costs) => {
        const queue = new Queue<{ readonly cost: number }>();
        for (const cost of costs) queue.add({ cost });
        const taken = costs.map(() => queue.take()!.cost);
        expect(taken).toEqual(costs.toSorted((a, b) => a - b));
        expect(queue.take()).toBeUndefined();
      }),
    );
  });
});
