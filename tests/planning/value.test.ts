import { describe, expect, it } from 'vitest';
import { shortfall } from '../../shared/planning/value';

/** Octaves of tempo below the target of 240. */
const below = (octaves: number): number => shortfall(Math.log2(60) - octaves, 240);
const slope = (octaves: number): number => (below(octaves + 1e-4) - below(octaves)) / 1e-4;

describe('the shortfall', () => {
  it('falls to nothing a little above the target, without being dropped there', () => {
    expect(below(0)).toBeGreaterThan(0);
    expect(below(-1)).toBeLessThan(1e-4);
    expect(slope(0)).toBeGreaterThan(slope(-0.5));
  });

  it('counts the more for what lacks more, but not beyond what is much', () => {
    expect(slope(0.2)).toBeGreaterThan(1.2 * slope(0));
    expect(slope(1.5)).toBeCloseTo(slope(1), 3);
  });

  it('has no step where it bends', () => {
    const steps = Array.from({ length: 200 }, (_, i) => slope(-0.5 + i / 100));
    const jumps = steps.slice(1).map((one, i) => Math.abs(one - steps[i]!));
    expect(Math.max(...jumps)).toBeLessThan(0.03);
  });
});
