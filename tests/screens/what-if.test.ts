import { describe, expect, it } from 'vitest';
import { addDays } from '../../shared/log/day';
import type { Programme } from '../../shared/log/programme';
import { roundItems } from '../../shared/music/deck';
import type { Forecast } from '../../shared/planning/forecast';
import { replay } from '../../shared/planning/student';
import { forecastWith } from '../../shared/planning/what-if';
import { outlookText } from '../../src/screens/settings/outlook';
import { programme, run, START } from '../learning/events';

/** A student who gains on all chords of one note, week by week, right hand over two octaves. */
function gaining() {
  const none = { asked: false, target: 240 };
  const stages = {
    'right.2': { asked: true, target: 400 },
    'left.2': none,
    'together.2': none,
    'together.4': none,
    'together.contrary': none,
  };
  const log = [programme({ notes: ['c'], stages, minutes: 20, daysPerWeek: 6 })];
  for (let week = 0; week < 10; week++) {
    for (const day of [0, 2, 4]) {
      for (const { id } of roundItems('c', 'right.2')) {
        log.push(run(id, week % 4 === 3 ? 2 : 3, 120 + 8 * week, 7 * week + day));
      }
    }
  }
  return replay(log);
}

const TODAY = addDays(START, 70);
const student = gaining();
const holds = student.programme!;
const daysWith = (change: Partial<Programme>): number => {
  const forecast: Forecast | null = forecastWith(student, { ...holds, ...change }, TODAY);
  if (forecast?.kind !== 'expected') throw new Error(`not expected but ${forecast?.kind}`);
  return forecast.days;
};

describe('what other minutes and days would mean', () => {
  it('is nearer with more time and further with less, as gains grow with the time', () => {
    const now = daysWith({});
    expect(now).toBeGreaterThan(20);
    expect(Math.abs(daysWith({ minutes: 30 }) - now / 1.5)).toBeLessThanOrEqual(1);
    expect(Math.abs(daysWith({ daysPerWeek: 5 }) - now * 1.2)).toBeLessThanOrEqual(1);
    // The same minutes a week are the same pace.
    expect(daysWith({ minutes: 40, daysPerWeek: 3 })).toBe(now);
  });

  it('follows what is asked', () => {
    const stages = { ...holds.stages, 'right.2': { asked: true, target: 340 } };
    expect(daysWith({ stages })).toBeLessThan(daysWith({}));
  });

  it('is not known for other notes, nor without a programme', () => {
    expect(forecastWith(student, { ...holds, notes: ['d'] }, TODAY)).toBeNull();
    expect(forecastWith(replay([]), holds, TODAY)).toBeNull();
  });

  it('is told in one line that changes with the minutes', () => {
    expect(outlookText(student, holds, TODAY)).toMatch(
      /^With this time all of it is ready about \d+ \w+ 202\d\.$/,
    );
    expect(outlookText(student, { ...holds, minutes: 30 }, TODAY)).toMatch(
      /ready about \d+ \w+ 202\d; as it was, about \d+ \w+ 202\d\.$/,
    );
    expect(outlookText(replay([programme()]), holds, TODAY)).toBeNull();
  });
});
