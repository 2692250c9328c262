import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { endingAt } from '../../src/screens/play/ending';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => vi.useRealTimers());

/** A course of 24 steps at beats of a second, four notes each. */
function course() {
  const finish = vi.fn<() => void>();
  const ending = endingAt(24, { msPerBeat: 1000, grouping: 4 }, finish);
  /** Plays the steps, so many milliseconds apart. */
  const play = (from: number, to: number, apart = 250) => {
    for (let step = from; step <= to; step++) {
      vi.advanceTimersByTime(apart);
      ending.reached(step);
    }
  };
  return { finish, ending, play };
}

test('two beats after the last note it is over', () => {
  const { finish, play } = course();
  play(0, 24);
  vi.advanceTimersByTime(1990);
  expect(finish).not.toHaveBeenCalled();
  vi.advanceTimersByTime(20);
  expect(finish).toHaveBeenCalledTimes(1);
});

test('where the last note does not come it is over four beats after it was due', () => {
  const { finish, play } = course();
  play(0, 23);
  vi.advanceTimersByTime(4240);
  expect(finish).not.toHaveBeenCalled();
  vi.advanceTimersByTime(20);
  expect(finish).toHaveBeenCalledTimes(1);
});

test('the rest is that of the tempo that is played, but three seconds at least', () => {
  const slow = course();
  slow.play(0, 23, 500);
  vi.advanceTimersByTime(8490);
  expect(slow.finish).not.toHaveBeenCalled();
  vi.advanceTimersByTime(20);
  expect(slow.finish).toHaveBeenCalledTimes(1);
  const fast = course();
  fast.play(0, 23, 125);
  vi.advanceTimersByTime(3120);
  expect(fast.finish).not.toHaveBeenCalled();
  vi.advanceTimersByTime(10);
  expect(fast.finish).toHaveBeenCalledTimes(1);
});

test('a last note that comes late ends it as ever', () => {
  const { finish, play } = course();
  play(0, 23);
  play(24, 24, 2500);
  vi.advanceTimersByTime(1990);
  expect(finish).not.toHaveBeenCalled();
  vi.advanceTimersByTime(1000);
  expect(finish).toHaveBeenCalledTimes(1);
});

test('who rests earlier, or begins again, goes on', () => {
  const { finish, play } = course();
  play(0, 22);
  vi.advanceTimersByTime(60_000);
  play(23, 23);
  play(12, 12);
  vi.advanceTimersByTime(60_000);
  expect(finish).not.toHaveBeenCalled();
});

test('what was stopped is not ended', () => {
  const { finish, ending, play } = course();
  play(0, 23);
  ending.cancel();
  vi.advanceTimersByTime(60_000);
  expect(finish).not.toHaveBeenCalled();
});
