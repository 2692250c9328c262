/**
 * The span table of Parncutt et al. 1997 (Music Perception 14(4):341-382), read at second hand in two places (F2), and
 * the regularities that both show.
 */
import { describe, expect, it } from 'vitest';
import { AVERAGE_SPAN, spanOf } from '../../shared/music/fingering/spans';
import type { Finger } from '../../shared/music/fingering/types';

/** Pair, then MinPrac MinComf MinRel MaxRel MaxComf MaxPrac, as printed. */
const PRINTED = `
1-2 -5 -3 1 5 8 10
1-3 -4 -2 3 7 10 12
1-4 -3 -1 5 9 12 14
1-5 -1 1 7 10 13 15
2-3 1 1 1 2 3 5
2-4 1 1 3 4 5 7
2-5 2 2 5 6 8 10
3-4 1 1 1 2 2 4
3-5 1 1 3 4 5 7
4-5 1 1 1 2 3 5`;

const rows = PRINTED.trim()
  .split('\n')
  .map((line) => {
    const [pair, ...limits] = line.split(' ');
    const [first, second] = pair!.split('-').map(Number) as [Finger, Finger];
    return { first, second, limits: limits.map(Number) };
  });

const limitsOf = (first: Finger, second: Finger): readonly number[] => {
  const span = spanOf(first, second);
  return [
    span.minPractical,
    span.minComfortable,
    span.minRelaxed,
    span.maxRelaxed,
    span.maxComfortable,
    span.maxPractical,
  ];
};

describe('the spans of finger pairs', () => {
  it.each(rows)('$first-$second is as printed', ({ first, second, limits }) => {
    expect(limitsOf(first, second)).toEqual(limits);
  });

  it.each(rows)('$second-$first has least and most exchanged and negated', (row) => {
    const { first, second, limits } = row;
    expect(limitsOf(second, first)).toEqual(limits.map((limit) => -limit).toReversed());
  });

  it.each(rows)('$first-$second has the regularities of the table', ({ first, second }) => {
    const span = spanOf(first, second);
    const hasThumb = first === 1;
    expect(span.maxComfortable).toBe(span.maxPractical - 2);
    expect(span.minComfortable).toBe(span.minPractical + (hasThumb ? 2 : 0));
    if (hasThumb) return;
    expect(span.maxRelaxed).toBe(2 * (second - first));
    expect(span.minRelaxed).toBe(span.maxRelaxed - 1);
  });

  it('are zero for a finger with itself', () => {
    expect(limitsOf(3, 3)).toEqual([0, 0, 0, 0, 0, 0]);
  });

  it('are those of a hand that reaches a minor ninth in comfort', () => {
    expect(AVERAGE_SPAN).toBe(13);
  });
});
