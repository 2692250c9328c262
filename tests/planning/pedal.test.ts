import { expect, test } from 'vitest';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { isReadyForPedal } from '../../shared/planning/pedal';
import { replay } from '../../shared/planning/student';
import { programme, run } from '../learning/events';

const ONE = 'd.major-6.right.2';
const TWO = 'd.minor-6.right.2';
const { target } = DEFAULT_PROGRAMME.stages['right.2'];
const isReady = (...runs: ReturnType<typeof run>[]) =>
  isReadyForPedal(replay([programme(), ...runs]), DEFAULT_PROGRAMME, [ONE, TWO]);

test('PEDAL: it waits until all are even at the tempo that is asked', () => {
  expect(isReady()).toBe(false);
  expect(isReady(run(ONE, 3, target))).toBe(false);
  expect(isReady(run(ONE, 3, target), run(TWO, 2, target))).toBe(false);
  expect(isReady(run(ONE, 3, target), run(TWO, 4, target - 4))).toBe(false);
  expect(isReady(run(ONE, 3, target), run(TWO, 4, target))).toBe(true);
});

test('one that does not hold goes back to dry', () => {
  expect(isReady(run(ONE, 3, target), run(TWO, 4, target), run(ONE, 1, target))).toBe(false);
});
