import { describe, expect, it } from 'vitest';
import { addDays } from '../../shared/log/day';
import { itemOf, roundItems } from '../../shared/music/deck';
import { frontStage, isNothingNew } from '../../shared/planning/front';
import { newStudent, replay } from '../../shared/planning/student';
import { planDay } from '../../shared/planning/today';
import { programme, run, START } from '../learning/events';

const on = (day: number) => addDays(START, day);
const { arpeggioIndex } = itemOf('d.major-6.right.2');
const begun = [programme(), run('d.major-6.right.2', 3, 160), run('d.major-6.right.2', 4, 160, 1)];

describe('a day without anything new', () => {
  it('RETURN: comes after more than a week without a run, and not for a new student', () => {
    const student = replay(begun);
    expect(isNothingNew(student, on(8))).toBe(false);
    expect(isNothingNew(student, on(9))).toBe(true);
    expect(isNothingNew(newStudent(), on(9))).toBe(false);
  });

  it('EVE: comes in the week before the date, the day of it included, and not after', () => {
    const student = replay([programme({ date: on(20) }), run('d.major-6.right.2', 3, 160, 12)]);
    const days = [13, 14, 19].map((day) => isNothingNew(student, on(day)));
    expect(days).toEqual([false, true, true]);
    const played = replay([programme({ date: on(20) }), run('d.major-6.right.2', 3, 160, 20)]);
    expect([20, 21].map((day) => isNothingNew(played, on(day)))).toEqual([true, false]);
  });

  it('keeps to the highest stage that was played', () => {
    const student = replay(begun);
    expect(student.stages.open[arpeggioIndex]).toBe(1);
    expect(frontStage(student, arpeggioIndex, false)).toBe(1);
    expect(frontStage(student, arpeggioIndex, true)).toBe(0);
  });

  it.each([
    ['RETURN', null, 30],
    ['EVE', on(24), 20],
  ])('%s: begins no starting note that was never played', (_rule, date, day) => {
    const log = [programme({ date })];
    for (const note of ['c', 'd', 'e', 'f'] as const) {
      for (const { id } of roundItems(note, 'right.2')) log.push(run(id, 3, 200, 19));
    }
    const student = replay(log);
    const { entries, seconds } = planDay(student, on(day), 20);
    expect(entries.flatMap(({ items }) => items.filter((id) => !student.lastRuns.has(id)))).toEqual(
      [],
    );
    expect(seconds).toBeGreaterThan(18 * 60);
  });

  it('EVE: whoever has played nothing yet has a list all the same', () => {
    const { entries } = planDay(replay([programme({ date: on(3) })]), on(0), 10);
    expect(entries.length).toBeGreaterThan(3);
  });

  it('RETURN: lists what was played before, as soon as there is enough of it', () => {
    const log = [programme({ notes: ['d', 'g'] })];
    for (const day of [0, 1]) {
      for (const note of ['d', 'g'] as const) {
        for (const chord of ['major-53', 'minor-53', 'major-6', 'minor-6'] as const) {
          log.push(run(`${note}.${chord}.right.2`, 4, 200, day));
        }
      }
    }
    const student = replay(log);
    const newOn = (day: number): number =>
      planDay(student, on(day), 6).entries.filter(({ items, reason }) =>
        reason.kind === 'look-back'
          ? false
          : items.some((id) => itemOf(id).way === 'left.2' && !student.lastRuns.has(id)),
      ).length;
    expect(newOn(2)).toBeGreaterThan(0);
    expect(newOn(20)).toBe(0);
  });
});
