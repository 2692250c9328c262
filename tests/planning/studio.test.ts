import { describe, expect, it } from 'vitest';
import { readinessOf } from '../../shared/learning/readiness';
import { addDays } from '../../shared/log/day';
import type { EventBody, LogEvent } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { reportOf } from '../../shared/planning/report';
import { replay } from '../../shared/planning/student';
import { studioFigures } from '../../shared/planning/studio';
import { event, programme, run, START } from '../learning/events';

/** The day that is `days` after the first of the log. */
const dayOf = (days: number) => addDays(START, days);
const figuresOf = (events: readonly LogEvent[], today: number) =>
  studioFigures(replay(events), dayOf(today));
const runOn = (day: number) => run('d.major-6.right.2', 3, 240, day);
const remarkOn = (day: number, by?: 'player' | 'teacher') =>
  event({ kind: 'remark', about: null, text: 'thumb', ...(by && { by }) }, day);
const REPORT: EventBody = { kind: 'report', share: 0.5, stages: [], played: 3 };

describe('readiness of a student among others', () => {
  const asked = { ...DEFAULT_PROGRAMME, date: dayOf(40) };
  const events = () => [programme(asked), runOn(0), runOn(1)];

  it('is that of the report: the mean of the chances, today and on the date', () => {
    const student = replay(events());
    const { now, onDate, date } = studioFigures(student, dayOf(3));
    const report = reportOf(student, asked, dayOf(3));
    expect([now, onDate, date]).toEqual([report.now.share, report.onDate.share, dayOf(40)]);
    expect(now).toBe(readinessOf(student.learner, asked, dayOf(3)).share);
    expect(now).toBeGreaterThan(onDate!);
  });

  it('on the day of the examination both are the same; then there is none on the date', () => {
    const onTheDay = figuresOf(events(), 40);
    expect(onTheDay.onDate).toBe(onTheDay.now);
    expect(figuresOf(events(), 41)).toMatchObject({ onDate: null, date: dayOf(40) });
  });

  it('is none without a programme', () => {
    expect(figuresOf([runOn(0)], 0)).toMatchObject({ now: null, onDate: null, date: null });
  });
});

describe('practice lately', () => {
  it('is that of 28 days with today', () => {
    const events = [runOn(0), runOn(1), runOn(1), runOn(28)];
    expect(figuresOf(events, 27).days).toBe(2);
    const { days, seconds, lastPractice } = figuresOf(events, 28);
    expect([days, lastPractice]).toEqual([2, dayOf(28)]);
    // d.major-6 over two octaves: 6 notes up, 6 down, at 240 notes a minute 3 s; three runs.
    expect(seconds).toBeCloseTo(9, 9);
    expect(figuresOf(events, 29).days).toBe(1);
  });

  it('a day of drills alone is a day of practice', () => {
    const drill = event({ kind: 'drill', drill: 'd.major-6.left.chords' }, 2);
    expect(figuresOf([drill], 3)).toMatchObject({ days: 1, seconds: 0, lastPractice: dayOf(2) });
  });

  it('is none before the first', () => {
    expect(figuresOf([programme()], 3)).toMatchObject({ days: 0, seconds: 0, lastPractice: null });
  });

  it('a student who is where it is tomorrow already is counted with that day', () => {
    const events = [runOn(1), runOn(2), runOn(29)];
    expect(figuresOf(events, 28)).toMatchObject({ days: 2, lastPractice: dayOf(29) });
    expect(figuresOf([runOn(30)], 28).days).toBe(1);
  });

  it('a day far ahead is that of a clock that was wrong: it is told, and not counted', () => {
    expect(figuresOf([runOn(1), runOn(400)], 2)).toMatchObject({
      days: 1,
      lastPractice: dayOf(400),
    });
  });

  it('what is taken back was no practice', () => {
    const [one, two] = [runOn(1), runOn(2)];
    const back = event({ kind: 'void', events: [two.id] }, 2);
    expect(figuresOf([one, two, back], 3)).toMatchObject({ days: 1, lastPractice: dayOf(1) });
  });
});

describe('remarks that wait', () => {
  it('are those of the player of the last four weeks', () => {
    expect(figuresOf([remarkOn(0), remarkOn(1), remarkOn(9, 'player')], 28).remarks).toBe(2);
  });

  it.each([
    ['a remark of the teacher', () => remarkOn(3, 'teacher')],
    ['a report', () => event(REPORT, 3)],
  ])('until %s follows', (_, answer) => {
    expect(figuresOf([remarkOn(1), answer()], 4).remarks).toBe(0);
    expect(figuresOf([answer(), remarkOn(5)], 6).remarks).toBe(1);
  });
});
