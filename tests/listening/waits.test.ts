/** A wait among few notes: what is usual in a playing must not be told from the wait itself. */
import { expect, test } from 'vitest';
import { expectedOf } from '../../shared/listening/expected';
import { findingsOf } from '../../shared/listening/findings';
import { judge } from '../../shared/listening/judge';
import { itemOf } from '../../shared/music/deck';
import { scoreOf } from '../../shared/music/score-of';
import { OPTIONS } from '../formats/scores';

const score = scoreOf([itemOf('c.major-53.right.2')], { ...OPTIONS, pedal: false });
const expected = expectedOf(score);
/** Milliseconds from note to note. */
const DUE = 187.5;

/** `lates`: milliseconds by which each note comes later after the one before than is due; null where it is missed. */
function told(lates: readonly (number | null)[]) {
  let on = 1;
  const notes = expected.steps.flatMap(([note], step) => {
    const late = step === 0 ? 0 : lates[step - 1]!;
    on += ((step === 0 ? 0 : DUE) + (late ?? 0)) / 1000;
    if (late === null) return [];
    return [{ midi: note!.key.midi, on, off: on + 0.2, loudness: 60, confidence: 1 }];
  });
  const [measured] = judge(expected, {
    source: 'midi',
    notes,
    pedal: [],
    hasTimeOfEachHand: true,
  });
  const hesitations = findingsOf(measured!, score).filter(({ kind }) => kind === 'hesitation');
  return { hesitations, unevenness: measured!.hands.right!.unevenness! };
}

test('a wait of 67 ms in a playing of 13 notes and 10 ms of unevenness is told', () => {
  const { hesitations, unevenness } = told([18, 67, -6, 4, -8, 11, -8, -1, 8, null, 5, -14]);
  expect(hesitations).toMatchObject([{ step: 2, hand: 'right' }]);
  expect(unevenness).toBeLessThan(12);
});

test('two waits are, and the spread that they make hides neither', () => {
  const { hesitations } = told([9, 5, 75, -9, 11, -6, 4, 82, -12, 7, -8, 3]);
  expect(hesitations).toMatchObject([{ step: 3 }, { step: 8 }]);
});

test('what is longest among few uneven notes may be chance, and is no hesitation', () => {
  const { hesitations, unevenness } = told([-12, 14, -15, 10, -9, 55, -14, 12, -11, 13, -10, 9]);
  expect(hesitations).toEqual([]);
  expect(unevenness).toBeGreaterThan(18);
});
