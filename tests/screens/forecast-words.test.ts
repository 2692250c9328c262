import { describe, expect, it } from 'vitest';
import { addDays } from '../../shared/log/day';
import type { Programme } from '../../shared/log/programme';
import { roundItems } from '../../shared/music/deck';
import { replay } from '../../shared/planning/student';
import { forecastTexts, hindsightOf } from '../../src/screens/report/forecast-words';
import { programme, run, START } from '../learning/events';

/** A student who gains on all chords of one note, week by week, right hand over two octaves. */
function gaining(weeks: number, change: Partial<Programme> = {}) {
  const stages = {
    'right.2': { asked: true, target: 320 },
    'left.2': { asked: false, target: 240 },
    'together.2': { asked: false, target: 240 },
    'together.4': { asked: false, target: 240 },
    'together.contrary': { asked: false, target: 216 },
  };
  const log = [programme({ notes: ['c'], stages, minutes: 20, ...change })];
  for (let week = 0; week < weeks; week++) {
    for (const day of [0, 2, 4]) {
      for (const { id } of roundItems('c', 'right.2')) {
        log.push(run(id, week % 4 === 3 ? 2 : 3, 120 + 8 * week, 7 * week + day));
      }
    }
  }
  const student = replay(log);
  return { student, programme: student.programme!, today: addDays(START, 7 * weeks) };
}

const texts = (weeks: number, change?: Partial<Programme>) => {
  const { student, programme: set, today } = gaining(weeks, change);
  return forecastTexts(student, set, today);
};

describe('the forecast in words', () => {
  it('says that it is too early in the first weeks', () => {
    const { stages, pace } = texts(2);
    expect(stages).toEqual([expect.stringMatching(/^Right hand, two octaves: too early/i)]);
    expect(pace).toEqual([]);
  });

  it('gives a date with an interval, and what more minutes and a day off would mean', () => {
    const { stages, pace } = texts(10);
    expect(stages[0]).toMatch(
      /about \d+ \w+ 20\d\d; eight in ten of such forecasts come true between .* and .*\.$/,
    );
    expect(pace).toHaveLength(2);
    expect(pace[0]).toMatch(/with 10 minutes more a day: about \d+ \w+ 20\d\d\.$/);
    expect(pace[1]).toMatch(/^With one more day off a week: about/);
  });

  it('says early what a date would take, and when it is out of reach', () => {
    const near = addDays(START, 7 * 10 + 3);
    expect(texts(10, { date: near }).pace[0]).toMatch(
      /more practice changes little: of a hundred items about \d+ would come out even on that day\.$/,
    );
    const soon = addDays(START, 7 * 10 + 15);
    expect(texts(10, { date: soon }).pace[0]).toMatch(/is out of reach, as things stand/);
    const far = addDays(START, 7 * 10 + 700);
    expect(texts(10, { date: far }).pace[0]).toMatch(/^The pace is enough for/);
  });
});

describe('the forecasts so far', () => {
  it('are told when there are enough runs, with what was foretold and what happened', () => {
    expect(hindsightOf(gaining(2).student.learner)).toBeNull();
    const hindsight = hindsightOf(gaining(10).student.learner)!;
    const runs = hindsight.dots.reduce((sum, dot) => sum + dot.runs, 0);
    expect(runs).toBe(330);
    // Two weeks of ten came out uneven.
    expect(hindsight.text).toContain('80 did');
    expect(hindsight.text).toMatch(/Brier score\) is 0\.\d\d:/);
  });
});
