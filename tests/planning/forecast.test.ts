import { describe, expect, it } from 'vitest';
import { addDays, dayNumber } from '../../shared/log/day';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import { roundItems } from '../../shared/music/deck';
import { type Learner, newLearner } from '../../shared/learning/learner';
import {
  type Forecast,
  forecastOf,
  type Milestone,
  milestoneOf,
  minutesFor,
  paceFrom,
  programmeForecast,
  SHORTEST,
} from '../../shared/planning/forecast';
import { replay } from '../../shared/planning/student';
import { programme, run, START } from '../learning/events';

const PROGRAMME: Programme = { ...DEFAULT_PROGRAMME, notes: ['c', 'd'] };

/** A learner who reaches so many notes a minute on all items of two notes, or on those of the first only. */
function known(tempo: number, day: number, notes: readonly ('c' | 'd')[] = ['c', 'd']): Milestone {
  const learner: Learner = newLearner();
  for (const note of notes) {
    for (const way of ['right.2', 'left.2', 'together.2', 'together.4'] as const) {
      for (const item of roundItems(note, way)) {
        const shared = learner.effects[0]! + learner.effects[1 + Math.floor(item.index / 132)]!;
        learner.residual[item.index] = Math.log2(tempo / 4) - shared;
        learner.variance[item.index] = 0;
        learner.lastDay[item.index] = dayNumber(addDays(START, day));
      }
    }
  }
  return milestoneOf(learner, PROGRAMME, addDays(START, day));
}

const expected = (forecast: Forecast) => {
  if (forecast.kind !== 'expected') throw new Error(`not expected but ${forecast.kind}`);
  return forecast;
};

describe('the forecast of a stage', () => {
  it('carries on what the slowest tenth has gained, more slowly', () => {
    // From 120 to 170 in 40 days is half an octave; from 170 to 240 is another. A slow pace is 0.002 octaves a day.
    const before = known(120, 0);
    const now = known(120 * Math.SQRT2, 40);
    const forecast = expected(forecastOf(PROGRAMME, 'together.4', { now, before }));
    expect(forecast.days).toBe(Math.ceil(0.5 / (0.7 * (0.5 / 40) + 0.3 * 0.002)));
    expect(forecast.soonest).toBeLessThan(forecast.days / 2);
    expect(forecast.latest).toBeGreaterThan(2 * forecast.days);
  });

  it('gives days that are few a few more to both sides', () => {
    const [before, now] = [known(120, 0), known(239, 40)];
    const { days, soonest, latest } = expected(
      forecastOf(PROGRAMME, 'together.4', { now, before }),
    );
    expect(days).toBe(1);
    expect(soonest).toBe(0);
    expect(latest).toBeGreaterThan(3);
  });

  it('is later the less is known of single items', () => {
    const learner = newLearner();
    const level = (spread: number): number => {
      learner.variance.fill(spread ** 2);
      return milestoneOf(learner, PROGRAMME, START).tenths[3]!;
    };
    expect(level(0.2)).toBeLessThan(level(0.1));
    // All items of a stage begin alike: nine in ten of a normal distribution lie above its mean less 1.2816 deviations.
    expect(level(0) - level(0.2)).toBeCloseTo(1.2816 * 0.2, 9);
  });

  it('takes what the first mark shows of kind ratings for no loss of pace', () => {
    const [before, now] = [known(120, 0), known(140, 40)];
    const lowered = { ...now, tenths: now.tenths.map((level) => level - 0.1), kindness: 0.1 };
    const gainOf = (at: Milestone): number => {
      const { days } = expected(forecastOf(PROGRAMME, 'together.4', { now: at, before }));
      return (Math.log2(240 / 4) - at.tenths[3]!) / days;
    };
    expect(Math.abs(gainOf(lowered) / gainOf(now) - 1)).toBeLessThan(0.02);
  });

  it('takes half the time with twice the practice', () => {
    const [before, now] = [known(120, 0), known(120 * Math.SQRT2, 40)];
    const days = (pace: number): number =>
      expected(forecastOf(PROGRAMME, 'together.4', { now, before, pace })).days;
    expect(Math.abs(days(2) - days(1) / 2)).toBeLessThanOrEqual(1);
  });

  it('is about the slowest tenth, not about the mean', () => {
    const before = known(120, 0);
    const fast = known(400, 40);
    const uneven = known(400, 40, ['c']);
    expect(forecastOf(PROGRAMME, 'together.4', { now: fast, before }).kind).toBe('ready');
    expect(forecastOf(PROGRAMME, 'together.4', { now: uneven, before }).kind).not.toBe('ready');
  });

  it('says nothing in the first weeks, and says so when nothing is gained', () => {
    const early = { before: known(120, 0), now: known(150, SHORTEST - 1) };
    expect(forecastOf(PROGRAMME, 'together.4', early).kind).toBe('early');
    const stalled = { before: known(120, 0), now: known(120, 40) };
    expect(forecastOf(PROGRAMME, 'together.4', stalled).kind).toBe('stalled');
    const worse = { before: known(120, 0), now: known(110, 40) };
    expect(forecastOf(PROGRAMME, 'together.4', worse).kind).toBe('stalled');
  });

  it('of a programme is that of the stage that takes longest', () => {
    const [before, now] = [known(120, 0), known(120 * Math.SQRT2, 40)];
    const stages = {
      ...PROGRAMME.stages,
      'right.2': { asked: true, target: 100 },
      'together.4': { asked: true, target: 300 },
    };
    const asked = { ...PROGRAMME, stages };
    const longest = forecastOf(asked, 'together.4', { now, before });
    expect(programmeForecast(asked, { now, before })).toEqual(longest);
    const ready = {
      ...PROGRAMME,
      stages: { ...stages, 'together.4': { asked: false, target: 300 } },
    };
    expect(programmeForecast(ready, { now: known(400, 40), before }).kind).toBe('ready');
  });
});

/** The log of so many weeks with one run each. */
const weekly = (weeks: number, change: Partial<Programme> = {}) => [
  programme({ notes: ['c', 'd'], ...change }),
  ...Array.from({ length: weeks }, (_, week) =>
    run('c.major-53.right.2', 3, 160 + 4 * week, 7 * week + (week % 2)),
  ),
];

describe('the milestones of a student', () => {
  it('are kept once a week, before the runs of their day', () => {
    const { milestones } = replay(weekly(20));
    expect(milestones[0]).toEqual(milestoneOf(newLearner(), PROGRAMME, START));
    const days = milestones.map(({ day }) => dayNumber(day) - dayNumber(START));
    expect(days.every((day, i) => i === 0 || day - days[i - 1]! >= 7)).toBe(true);
    expect(days.length).toBeGreaterThan(8);
  });

  it('begin anew with other notes, and stay with other minutes', () => {
    const log = weekly(6);
    const count = (change: Partial<Programme>): number =>
      replay([...log, programme(change)]).milestones.length;
    expect(count({ notes: ['c', 'd'], minutes: 45 })).toBeGreaterThan(2);
    expect(count({ notes: ['c'] })).toBe(0);
  });

  it('give the pace of the last twelve weeks, and never that of the first week', () => {
    const { milestones } = replay(weekly(20));
    const from = (day: number) => paceFrom(milestones, addDays(START, day));
    expect(from(10)?.day).toBe(milestones[1]!.day);
    expect(dayNumber(from(130)!.day) - dayNumber(START)).toBeGreaterThanOrEqual(130 - 84);
    expect(paceFrom(milestones.slice(0, 1), START)).toBeNull();
  });
});

describe('the minutes that a date needs', () => {
  const forecast = { kind: 'expected', days: 60, soonest: 30, latest: 120 } as const;

  it('grow as the days left fall', () => {
    expect(minutesFor(forecast, 60, 20)).toBe(20);
    expect(minutesFor(forecast, 40, 20)).toBe(30);
  });

  it('are none when three times as many would not do, or the date is here', () => {
    expect(minutesFor(forecast, 20, 20)).toBe(60);
    expect(minutesFor(forecast, 19, 20)).toBeNull();
    expect(minutesFor(forecast, 0, 20)).toBeNull();
  });
});
