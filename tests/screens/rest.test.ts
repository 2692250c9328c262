import { expect, test } from 'vitest';
import { addDays } from '../../shared/log/day';
import type { RunEvent } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { newStudent, type Student } from '../../shared/planning/student';
import { isRestDay, restAdvice, unbrokenMinutes } from '../../src/day/rest';

const MINUTE = 60_000;

/** A run of 12 notes at 12 a minute takes a minute; recorded at a minute of the day. */
const runAt = (minute: number): RunEvent => ({
  kind: 'run',
  id: String(minute),
  version: 1,
  at: minute * MINUTE,
  day: '2026-11-25',
  device: 'device',
  student: 'student',
  item: 'd.major-53.right.2',
  tempo: 12,
  fluency: 3,
  pedal: false,
  judge: 'player',
  entry: null,
});

const every = (from: number, to: number, step: number): RunEvent[] =>
  Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => runAt(from + i * step));

test('work counts from its first note', () => {
  expect(unbrokenMinutes([], 0)).toBe(0);
  expect(unbrokenMinutes([runAt(10)], 10 * MINUTE)).toBe(1);
  expect(unbrokenMinutes(every(10, 30, 2), 31 * MINUTE)).toBe(22);
});

test('runs of a round, recorded together, count one after another', () => {
  expect(unbrokenMinutes([runAt(10), runAt(10), runAt(10)], 10 * MINUTE)).toBe(3);
});

test('five minutes without a run are a rest', () => {
  expect(unbrokenMinutes(every(0, 30, 2), 35 * MINUTE)).toBe(0);
  expect(unbrokenMinutes([...every(0, 30, 2), runAt(36)], 36 * MINUTE)).toBe(1);
});

const adviceAfter = (minutes: number) => restAdvice(every(1, minutes, 1), minutes * MINUTE);

test('REST: a rest is offered after 25 minutes and asked for after 50', () => {
  expect([24, 25, 49, 50].map(adviceAfter)).toEqual(['none', 'offer', 'offer', 'insist']);
});

function studentWhoWorked(daysAgo: readonly number[], daysPerWeek: number): Student {
  const work = new Map(
    daysAgo.map((ago) => [addDays('2026-11-25', -ago), { runs: 10, seconds: 300 }] as const),
  );
  return { ...newStudent(), programme: { ...DEFAULT_PROGRAMME, daysPerWeek }, work };
}

test('a day of rest comes when the week has had its days', () => {
  const day = '2026-11-25';
  expect(isRestDay(studentWhoWorked([1, 2, 3, 4, 5, 6], 6), day)).toBe(true);
  expect(isRestDay(studentWhoWorked([1, 2, 3, 4, 5], 6), day)).toBe(false);
  expect(isRestDay(studentWhoWorked([2, 3, 4, 5, 6], 5), day)).toBe(true);
  expect(isRestDay(studentWhoWorked([1, 2, 3, 4, 5, 6], 7), day)).toBe(false);
  expect(isRestDay(studentWhoWorked([0, 1, 2, 3, 4, 5, 6], 6), day)).toBe(false);
});
