import { expect, test } from 'vitest';
import type { HandTake } from '../../shared/log/run-take';
import { itemOf } from '../../shared/music/deck';
import { scoreOf } from '../../shared/music/score-of';
import type { HeardEvent } from '../../src/screens/item/heard-section';
import { joinsOverTime } from '../../src/screens/item/join-lines';
import { OPTIONS } from '../formats/scores';

const score = scoreOf([itemOf('c.major-53.right.2')], { ...OPTIONS, pedal: false });
const joins = score.right.flatMap(({ change }, step) => (change === null ? [] : [step]));

/** A run of which only the waits at the two joins matter. */
function heard(day: string, up: number | null, down: number | null): HeardEvent {
  const waits = score.right.map((_, step) =>
    step === joins[0] ? up : step === joins[1] ? down : 0,
  );
  const right = { waits } as unknown as HandTake;
  return { day, take: { hands: { right, left: null } } } as unknown as HeardEvent;
}

const linesOf = (runs: readonly HeardEvent[]) =>
  joinsOverTime(runs, score).map(({ join, waits }) => [
    join.way,
    waits.map(({ day, wait }) => `${day.slice(5)} ${wait}`),
  ]);

test('over weeks a join has a point for each day, the mean of its takes; the longest of the last day comes first', () => {
  expect(joins).toHaveLength(2);
  const runs = [
    heard('2026-09-01', 200, 10),
    heard('2026-10-01', 100, 60),
    heard('2026-10-01', 50, 20),
    heard('2026-11-01', null, 90),
  ];
  expect(linesOf(runs)).toEqual([
    ['down', ['09-01 10', '10-01 40', '11-01 90']],
    ['up', ['09-01 200', '10-01 75']],
  ]);
});

test('on one day it has a point for each take', () => {
  expect(linesOf([heard('2026-11-01', 80, 0), heard('2026-11-01', 40, 0)])[0]).toEqual([
    'up',
    ['11-01 80', '11-01 40'],
  ]);
});
