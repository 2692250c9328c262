import { describe, expect, it } from 'vitest';
import { addDays, dayNumber } from '../../shared/log/day';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import { itemOf, type ItemId, roundItems } from '../../shared/music/deck';
import { coldRoundOn } from '../../shared/planning/cold-round';
import { datesAhead, daysOfEve, minutesOn } from '../../shared/planning/dates';
import { reasonText } from '../../shared/planning/reasons';
import { replay } from '../../shared/planning/student';
import { planDay } from '../../shared/planning/today';
import { programme, run, START } from '../learning/events';

const on = (day: number) => addDays(START, day);
const number = (day: number) => dayNumber(on(day));
const withDates = (date: number | null, ...further: readonly number[]): Programme => ({
  ...DEFAULT_PROGRAMME,
  date: date === null ? null : on(date),
  furtherDates: further.map((day) => ({ day: on(day), words: 'lesson' })),
});

describe('the dates of a programme', () => {
  it('DATES: the list aims at the next date and does not forget the last', () => {
    expect(datesAhead(withDates(100, 5, 40), START)).toEqual([number(5), number(100)]);
    expect(datesAhead(withDates(30, 90, 4), on(5))).toEqual([number(30), number(90)]);
    expect(datesAhead(withDates(100), START)).toEqual([number(100)]);
    expect(datesAhead(withDates(null, 6), START)).toEqual([number(6)]);
  });

  it('DATES: once all are past, or without any, it looks four weeks ahead', () => {
    expect(datesAhead(withDates(null), START)).toEqual([number(28)]);
    expect(datesAhead(withDates(10, 3), on(10))).toEqual([number(38)]);
  });
});

describe('the week before the date', () => {
  it('TAPER: has less of the minutes day by day, and never more than they are', () => {
    const { date, ...ordinary } = withDates(10);
    const minutes = [3, 4, 5, 6, 7, 8, 9, 10, 11].map((day) =>
      minutesOn({ ...ordinary, date, minutes: 40 }, on(day)),
    );
    expect(minutes).toEqual([40, 36, 32, 28, 24, 20, 16, 12, 40]);
    expect(minutesOn({ ...ordinary, date, minutes: 10 }, on(9))).toBe(5);
    expect(minutesOn({ ...ordinary, date, minutes: 3 }, on(9))).toBe(3);
  });

  it('TAPER: is not asked for by a lesson', () => {
    expect(daysOfEve(withDates(90, 3), START)).toBeNull();
    expect(minutesOn(withDates(90, 3), on(2))).toBe(DEFAULT_PROGRAMME.minutes);
  });
});

/** Rounds over four octaves that were effortless at the target on four days. */
const known = (notes: readonly ('c' | 'd' | 'g')[]) =>
  notes.flatMap((note) =>
    [0, 1, 2, 3].flatMap((day) =>
      roundItems(note, 'together.4').map(({ id }) => run(id, 4, 240, day)),
    ),
  );
const before = { notes: ['c', 'd', 'g'], reached: 'together.4', date: on(10) } as const;

describe('a cold round', () => {
  const student = replay([programme(before), ...known(['c', 'd'])]);
  const coldOn = (day: number) =>
    planDay(student, on(day), 20).entries.filter(({ reason }) => reason.kind === 'cold');

  it('COLD: opens each day of the last week, whole, at the target, and says why', () => {
    const [entry, ...others] = planDay(student, on(5), 20).entries;
    expect(entry).toMatchObject({ kind: 'round', way: 'together.4', tempo: 240 });
    expect(entry!.items).toHaveLength(11);
    expect(reasonText(entry!.reason, 4)).toMatch(
      /^As on the day itself: once, cold, at the tempo that is asked\. Likely even at \d+\.$/,
    );
    expect(others.map(({ reason }) => reason.kind)).not.toContain('cold');
  });

  it('COLD: is another note each day, of those that are nearly ready, and not on the day itself', () => {
    const notes = [4, 5, 6, 7, 8, 9].flatMap((day) => coldOn(day).map(({ note }) => note));
    expect(notes).toEqual(['c', 'd', 'c', 'd', 'c', 'd']);
    expect(coldOn(3)).toEqual([]);
    expect(coldOn(10)).toEqual([]);
  });

  it('COLD: waits where nothing is near, and leaves out what is set aside', () => {
    const bad: ItemId[] = roundItems('g', 'together.4').map(({ id }) => id);
    const poor = replay([programme(before), ...bad.map((id) => run(id, 0, 100))]);
    expect(coldRoundOn(poor, poor.programme!, on(5))).toBeNull();
    expect(itemOf(bad[0]!).note).toBe('g');
  });
});
