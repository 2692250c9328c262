/** Values of the standard normal distribution as in the tables of any statistics textbook (from memory, high). */
import { describe, expect, it } from 'vitest';
import { cumulative, density } from '../../shared/learning/normal';

describe('the normal distribution', () => {
  it.each([
    [0, 0.5],
    [1, 0.8413447461],
    [-1, 0.1586552539],
    [1.644853627, 0.95],
    [1.9599639845, 0.975],
    [2.5758293035, 0.995],
    [0.5244005127, 0.7],
    [-3, 0.0013498980316],
    [-8, 6.220960574e-16],
  ])('has probability %f below %f', (z, probability) => {
    expect(cumulative(z) / probability).toBeCloseTo(1, 7);
  });

  it('has density 1 / sqrt(2 pi) at 0', () => expect(density(0)).toBeCloseTo(0.3989422804, 10));

  it('stays in bounds far out', () => {
    expect(cumulative(50)).toBe(1);
    expect(cumulative(-50)).toBe(0);
    expect(cumulative(Infinity)).toBe(1);
  });
});
