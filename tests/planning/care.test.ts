import { describe, expect, test } from 'vitest';
import type { Programme, StageGoal } from '../../shared/log/programme';
import { handsOf, itemOf, roundItems, STAGES } from '../../shared/music/deck';
import { workingTempo } from '../../shared/learning/prediction';
import { planWithCare, SORE } from '../../shared/planning/care';
import { replay } from '../../shared/planning/student';
import { planDay } from '../../shared/planning/today';
import { event, programme, run, START } from '../learning/events';

const played = roundItems('c', 'left.2').map(({ id }) => run(id, 4, 240));
const student = replay([programme({ reached: 'together.2' }), ...played]);
const mapAll = (goal: StageGoal) =>
  Object.fromEntries(STAGES.map((stage) => [stage, goal])) as Programme['stages'];
const plan = (sore: (typeof SORE)[number], minutes = 20, who = student) =>
  planWithCare(who, START, minutes, sore);

describe.each([
  ['right', 'left'],
  ['left', 'right'],
] as const)('a sore %s hand', (sore, other) => {
  const { entries, seconds } = plan(sore);
  const atTheKeys = entries.filter(({ isMental }) => !isMental);

  test(`plays nothing: all that is played is for the ${other}`, () => {
    expect(atTheKeys.length).toBeGreaterThan(0);
    for (const { way } of atTheKeys) expect(handsOf(way)).toBe(other);
  });

  test('the other plays slowly, each note once, and no more than half of the time', () => {
    expect(new Set(atTheKeys.map(({ note }) => note)).size).toBe(atTheKeys.length);
    for (const { items, tempo } of atTheKeys) {
      const usual = items.map((id) => workingTempo(student.learner, itemOf(id), START));
      expect(tempo).toBeLessThan(0.7 * Math.min(...usual));
    }
    const sum = atTheKeys.reduce((total, entry) => total + entry.seconds, 0);
    expect(sum).toBeLessThanOrEqual(600);
  });

  test('the rest is for the head, and the whole fits', () => {
    expect(entries.at(-1)!.isMental).toBe(true);
    expect(seconds).toBeLessThanOrEqual(1200);
    expect(seconds).toBe(entries.reduce((total, entry) => total + entry.seconds, 0));
  });
});

test('the weakest note comes first: C, which the left hand knows, comes last', () => {
  const notes = plan('right', 120).entries.flatMap((one) => (one.isMental ? [] : [one.note]));
  expect(notes).toHaveLength(7);
  expect(notes.at(-1)).toBe('c');
});

test('SORE: with both hands sore nothing is played, and ten minutes are enough', () => {
  const { entries, seconds } = plan('both', 60);
  expect(entries.length).toBeGreaterThan(0);
  for (const { isMental } of entries) expect(isMental).toBe(true);
  expect(seconds).toBeLessThanOrEqual(600);
});

test('in the mind one goes through what the day would have had', () => {
  const usual = new Set(planDay(student, START, 20).entries.flatMap(({ items }) => items));
  for (const { items } of plan('both').entries) {
    for (const item of items) expect(usual).toContain(item);
  }
});

test('a hand that has not begun yet is not thrown in', () => {
  const beginner = replay([programme({ reached: 'right.2' })]);
  for (const { isMental } of plan('right', 20, beginner).entries) expect(isMental).toBe(true);
});

test('what is set aside stays aside', () => {
  const aside = event({ kind: 'aside', item: 'c.major-53.left.2', aside: true });
  const without = replay([programme({ reached: 'together.2' }), aside]);
  const items = plan('right', 120, without).entries.flatMap((one) => one.items);
  expect(items).not.toContain('c.major-53.left.2');
});

test('chords that the programme does not ask for do not come in place of those that it does', () => {
  const triads = { asked: true, target: 240, chords: ['major-53', 'minor-53'] } as const;
  const stages = mapAll(triads);
  const narrowed = replay([programme({ reached: 'together.2', stages })]);
  const items = plan('right', 120, narrowed).entries.flatMap((one) => one.items);
  expect(new Set(items.map((id) => itemOf(id).chord))).toEqual(new Set(triads.chords));
});

test.each(SORE)('every entry has a key of its own: %s', (sore) => {
  const keys = plan(sore, 60).entries.map(({ key }) => key);
  expect(new Set(keys).size).toBe(keys.length);
});
