/** What is told of two notes, by evidence as it was measured on a recorded grand through a small microphone. */
import { expect, test } from 'vitest';
import { expectedOf, type ExpectedStep } from '../../../shared/listening/expected';
import { verdictsOf } from '../../../shared/listening/sound/verdict';
import { itemOf } from '../../../shared/music/deck';
import { scoreOf } from '../../../shared/music/score-of';
import { OPTIONS } from '../../formats/scores';

const LOWEST = 30;
/** Of the right hand and the left. */
const [ANY_STEP] = expectedOf(
  scoreOf([itemOf('c.major-53.together.2')], { ...OPTIONS, pedal: false }),
).steps as [ExpectedStep];

/** The verdicts on the upper and the lower of two notes, by the shares of keys in the sound that begins. */
function told(
  [high, low]: readonly [number, number],
  shares: Readonly<Record<number, number>>,
  evenOverOdd = 0,
) {
  const amounts = new Float32Array(70);
  for (const [midi, share] of Object.entries(shares)) amounts[Number(midi) - LOWEST] = share;
  // The rest lies too far from both for a note that was played instead.
  amounts[69] = 1 - amounts.reduce((sum, share) => sum + share, 0);
  const evidence = { lowest: LOWEST, amounts, total: 1, evenOverOdd: () => evenOverOdd };
  const step = ANY_STEP.map((note, i) => ({
    ...note,
    key: { ...note.key, midi: [high, low][i]! },
  }));
  return verdictsOf(step, evidence, { usual: 1, isQuiet: true });
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
  ['one of which there is as much, and some of them', 62, 0.043, 2, 'unsure'],
  ['one of which there is more, and as little of them', 50, 0.07, 3.5, 'unsure'],
  ['one of which there is little, with its odd partials', 50, 0.05, -0.2, 'right'],
  ['one that is played', 50, 0.12, 2, 'right'],
] as const)('an octave below another: %s', (_, low, share, evenOverOdd, lower) => {
  const verdicts = told([low + 12, low], { [low]: share, [low + 12]: 0.6 }, evenOverOdd);
  expect(verdicts.map(({ kind }) => kind)).toEqual(['right', lower]);
});

test.each([
  ['of which there is little', 36, 88, 0.048, 'unsure'],
  ['that is left out', 55, 83, 0.005, 'missed'],
  ['that is played', 34, 87, 0.071, 'right'],
] as const)('no octave below another, one %s', (_, low, high, share, lower) => {
  const verdicts = told([high, low], { [low]: share, [high]: 0.4 });
  expect(verdicts.map(({ kind }) => kind)).toEqual(['right', lower]);
});

test('a wrong upper note is told though it lies on a high partial of the lower one', () => {
  const verdicts = told([83, 54], { 54: 0.58, 82: 0.17 });
  expect(verdicts).toEqual([{ kind: 'wrong', midi: 82 }, { kind: 'right' }]);
});

test('a low partial of the lower note is no wrong upper one', () => {
  const verdicts = told([72, 55], { 55: 0.6, 67: 0.13, 72: 0.013 });
  expect(verdicts).toEqual([{ kind: 'unsure' }, { kind: 'right' }]);
});
