import { describe, expect, it } from 'vitest';
import { decodeEvent } from '../../shared/formats/event';
import { addDays } from '../../shared/log/day';
import type { Day, LogEvent } from '../../shared/log/events';
import { isDeepStrictEqual } from 'node:util';
import { readinessOf } from '../../shared/learning/readiness';
import { replay } from '../../shared/planning/student';
import { dayOf } from '../../src/clock';
import { inventHistory } from '../../src/demo/history';

const invent = (today: Day): readonly LogEvent[] =>
  [
    ...inventHistory({
      today,
      startOf: (day) => new Date(`${day}T16:00`).getTime(),
      student: '00000000-0000-4000-8000-00000000000a',
      device: '00000000-0000-4000-8000-00000000000b',
    }),
  ].flat();

const TODAY = '2026-11-25';
const events = invent(TODAY);
const student = replay(events);

/** What was played and how, without the day. */
const played = (event: LogEvent) =>
  event.kind === 'run' ? [event.item, event.tempo, event.fluency] : event.kind;

describe('the invented history', () => {
  it('is the same every time', () => {
    expect(isDeepStrictEqual(invent(TODAY), events)).toBe(true);
  });

  it('is the same on another day, moved', () => {
    expect(isDeepStrictEqual(invent('2027-03-31').map(played), events.map(played))).toBe(true);
  });

  it('holds events that the log takes, each later than the one before', () => {
    expect(events.every((event) => decodeEvent(event).outcome === 'ok')).toBe(true);
    expect(events.every((event, i) => i === 0 || event.id > events[i - 1]!.id)).toBe(true);
    expect(events.every((event) => dayOf(event.at) === event.day)).toBe(true);
  });

  it('covers about ten weeks with days missing, and ends the day before', () => {
    const days = [...student.work.keys()].toSorted();
    expect(days[0]! <= addDays(TODAY, -68)).toBe(true);
    expect(days.at(-1)).toBe(addDays(TODAY, -1));
    expect(days.length).toBeGreaterThan(40);
    expect(days.length).toBeLessThan(64);
  });

  it('says in its name that it is invented', () => {
    expect(student.name).toContain('(invented)');
  });

  it('leaves something to see: unlike stages, something weak, set aside and remarked', () => {
    const { byStage } = readinessOf(student.learner, student.programme!, TODAY);
    const shares = [...byStage.values()];
    expect(Math.max(...shares) - Math.min(...shares)).toBeGreaterThan(0.3);
    expect(student.aside.size).toBe(1);
    expect(student.remarks.length).toBeGreaterThan(2);
    expect(new Set(student.stages.open).size).toBeGreaterThan(2);
  });
});
