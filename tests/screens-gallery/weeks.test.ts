import { afterEach, describe, expect, it } from 'vitest';
import { addDays, dayNumber } from '../../shared/log/day';
import { mondayOf, weeksOf } from '../../shared/planning/weeks';

const ZONE = process.env.TZ;
afterEach(() => {
  process.env.TZ = ZONE;
});

describe('weeks', () => {
  it('begin on Monday, across the turn of a year', () => {
    expect(mondayOf('2026-11-25')).toBe('2026-11-23');
    expect(mondayOf('2026-11-23')).toBe('2026-11-23');
    expect(mondayOf('2026-11-29')).toBe('2026-11-23');
    // ISO 8601: 1 January 2027 is a Friday and belongs to week 53 of 2026.
    expect(mondayOf('2027-01-01')).toBe('2026-12-28');
  });

  // Havana and Azores change their clocks at midnight, Apia left out a day in 2011.
  it.each(['UTC', 'America/Havana', 'Atlantic/Azores', 'Pacific/Apia', 'Asia/Tokyo'])(
    'are the same in %s, by arithmetic on day numbers',
    (zone) => {
      process.env.TZ = zone;
      for (let day = '2011-12-20'; day < '2013-01-10'; day = addDays(day, 1)) {
        // 1 January 1970 was a Thursday, so day number 4 a Monday.
        const fromMonday = (((dayNumber(day) - 4) % 7) + 7) % 7;
        expect(mondayOf(day)).toBe(addDays(day, -fromMonday));
      }
    },
  );

  it('add up the work of their days and leave none out', () => {
    const work = new Map([
      ['2026-11-08', { runs: 100, seconds: 1000 }],
      ['2026-11-09', { runs: 10, seconds: 60 }],
      ['2026-11-15', { runs: 5, seconds: 30 }],
      ['2026-11-23', { runs: 1, seconds: 6 }],
      // Nothing is left of a day whose runs were all taken back.
      ['2026-11-24', { runs: 0, seconds: 0 }],
    ]);
    expect(weeksOf(work, '2026-11-25', 3)).toEqual([
      { monday: '2026-11-09', days: 2, runs: 15, seconds: 90 },
      { monday: '2026-11-16', days: 0, runs: 0, seconds: 0 },
      { monday: '2026-11-23', days: 1, runs: 1, seconds: 6 },
    ]);
  });
});
