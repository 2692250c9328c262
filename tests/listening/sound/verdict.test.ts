/** What is told of the lower of two notes, by evidence as it was measured on a recorded grand through a small microphone. */
import { expect, test } from 'vitest';
import type { ExpectedStep } from '../../../shared/listening/expected';
import { verdictsOf } from '../../../shared/listening/sound/verdict';

interface Measured {
  readonly low: number;
  readonly high: number;
  /** Shares of the two notes in the sound that begins. */
  readonly shares: readonly [number, number];
  readonly evenOverOdd: number;
}

function lowerOf({ low, high, shares, evenOverOdd }: Measured): string {
  const lowest = 30;
  const amounts = new Float32Array(70);
  [amounts[low - lowest], amounts[high - lowest]] = shares;
  // The rest lies too far from both for a note that was played instead.
  amounts[69] = 1 - shares[0] - shares[1];
  const evidence = { lowest, amounts, total: 1, evenOverOdd: () => evenOverOdd };
  const step = [high, low].map((midi, i) => ({
    hand: i === 0 ? 'right' : 'left',
    key: { midi, spelling: '', tone: 0 },
    finger: null,
    change: null,
    way: 'up',
  })) as unknown as ExpectedStep;
  const [upper, lower] = verdictsOf(step, evidence, { usual: 1, isQuiet: true });
  expect(upper).toEqual({ kind: 'right' });
  return lower!.kind;
}

test.each([
  ['a low one at a fast tempo, of which the microphone leaves little', 32, 0.088, 2.06, 'unsure'],
  ['one that is left out', 38, 0.006, 4.18, 'missed'],
  ['one that is left out, at the edge of what there is of any', 54, 0.019, 3.56, 'missed'],
  [
    'one of which there is something, and next to nothing of its odd partials',
    50,
    0.05,
    3.5,
    'missed',
  ],
  ['one of which there is more, and as little of them', 50, 0.07, 3.5, 'unsure'],
  ['one of which there is little, with its odd partials', 50, 0.05, -0.2, 'right'],
  ['one that is played', 50, 0.12, 2, 'right'],
] as const)('an octave below another: %s', (_, low, share, evenOverOdd, told) => {
  expect(lowerOf({ low, high: low + 12, shares: [share, 0.6], evenOverOdd })).toBe(told);
});

test.each([
  ['of which there is little', 36, 88, 0.048, 'unsure'],
  ['that is left out', 55, 83, 0.005, 'missed'],
  ['that is played', 34, 87, 0.071, 'right'],
] as const)('no octave below another, one %s', (_, low, high, share, told) => {
  expect(lowerOf({ low, high, shares: [share, 0.4], evenOverOdd: 1.2 })).toBe(told);
});
