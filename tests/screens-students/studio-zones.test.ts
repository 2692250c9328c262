import '../store/page';
import { afterAll, describe, expect, it } from 'vitest';
import { addDays } from '../../shared/log/day';
import type { Day } from '../../shared/log/events';
import { studioFigures } from '../../shared/planning/studio';
import { dayOf } from '../../src/clock';
import { examinationText, practiceText, waitingTexts } from '../../src/screens/studio/words';
import type { Overview } from '../../src/store/store';
import { programme, run, World } from '../store/world';

const home = process.env['TZ'];
afterAll(() => {
  if (home === undefined) delete process.env['TZ'];
  else process.env['TZ'] = home;
});

const FIGURES: Overview['figures'] = {
  now: 0.5,
  onDate: null,
  date: null,
  lastPractice: null,
  days: 0,
  seconds: 0,
  remarks: 0,
};

/** What a teacher reads in one zone of a student who has practised at some moment in another. */
async function readBy(teacher: string, now: string, student: string, practice: string) {
  process.env['TZ'] = student;
  const theirs = new World();
  theirs.at = Date.parse(practice);
  const record = await theirs.ready();
  await record.record([programme({ date: '2026-12-25' }), run()]);
  const file = await theirs.backup();
  process.env['TZ'] = teacher;
  const world = new World();
  world.at = Date.parse(now);
  const store = await world.ready();
  await store.restore(await store.previewBackup(file));
  const told: Overview[] = [];
  const today = store.today.value;
  const { signal: over } = new AbortController();
  const students = store.students.listed.value.map(({ id }) => id);
  await store.students.overlook({ students, today, tell: (one) => told.push(one), over });
  const [{ figures }] = told as [Overview];
  expect(figures).toEqual(studioFigures(store.student.value, today));
  for (const one of [theirs, world]) await one.end();
  const [, left] = examinationText(figures.date!, today);
  return [practiceText(figures.lastPractice, today), figures.days, left];
}

describe('when a student practised last, by the calendar of where the student was', () => {
  it.each([
    // Eight in the morning of 26 November in Auckland is the evening of the 25th in Lisbon.
    [
      'where it is tomorrow already',
      'Pacific/Auckland',
      '2026-11-25T19:00Z',
      '2026-11-25T20:00Z',
      'today',
    ],
    [
      'the same, the day after',
      'Pacific/Auckland',
      '2026-11-25T19:00Z',
      '2026-11-26T20:00Z',
      'today',
    ],
    [
      'and the day after that',
      'Pacific/Auckland',
      '2026-11-25T19:00Z',
      '2026-11-27T09:00Z',
      'yesterday',
    ],
    // Half past eleven at night of 24 November in New York is the morning of the 25th in Lisbon.
    [
      'where it was still yesterday',
      'America/New_York',
      '2026-11-25T04:30Z',
      '2026-11-25T16:00Z',
      'yesterday',
    ],
    // The first place of the earth to have a new day, UTC+14.
    ['at the other end', 'Pacific/Kiritimati', '2026-11-25T10:30Z', '2026-11-25T11:00Z', 'today'],
  ])('%s', async (_, student, practice, now, words) => {
    expect((await readBy('Europe/Lisbon', now, student, practice))[0]).toBe(words);
  });

  // UTC-12 and UTC+14: no two calendars are further apart.
  it('two calendar days ahead are today', async () => {
    const [words, days] = await readBy(
      'Etc/GMT+12',
      '2026-11-25T10:45Z',
      'Pacific/Kiritimati',
      '2026-11-25T10:30Z',
    );
    expect([words, days]).toEqual(['today', 1]);
  });

  it.each([
    // The clock of Berlin goes back on 25 October 2026 and forward on 29 March: days of 25 and of 23 hours.
    ['2026-10-24T21:30Z', '2026-10-25T22:30Z', 'yesterday', 'in 61 days'],
    ['2026-10-24T22:30Z', '2026-10-25T22:30Z', 'today', 'in 61 days'],
    ['2026-03-28T22:30Z', '2026-03-29T21:30Z', 'yesterday', 'in 271 days'],
    ['2026-03-28T23:30Z', '2026-03-29T21:30Z', 'today', 'in 271 days'],
  ])(
    'over a change of the clock: practice at %s, read at %s',
    async (practice, now, words, left) => {
      const zone = 'Europe/Berlin';
      expect(await readBy(zone, now, zone, practice)).toEqual([words, 1, left]);
    },
  );
});

/** What waits for somebody whose last file was made at some time. */
const told = (cameAt: number, today: Day) =>
  waitingTexts({ student: 's', figures: FIGURES, cameAt, givenOn: null }, today);

describe.each(['UTC', 'Europe/Berlin', 'America/New_York', 'Australia/Lord_Howe', 'Pacific/Apia'])(
  'in %s, on every day of a year',
  (zone) => {
    const days = Array.from({ length: 366 }, (_, i): Day => addDays('2026-01-01', i));

    it('days are counted by the calendar', () => {
      process.env['TZ'] = zone;
      for (const today of days) {
        const words = [-2, -1, 0, 1, 2, 14].map((ago) => practiceText(addDays(today, -ago), today));
        expect(words).toEqual([
          'today',
          'today',
          'today',
          'yesterday',
          '2 days ago',
          '14 days ago',
        ]);
        const left = [-1, 0, 1, 2].map((ahead) => examinationText(addDays(today, ahead), today)[1]);
        expect(left).toEqual(['over', 'today', 'tomorrow', 'in 2 days']);
      }
    });

    it('a file is old after a fortnight, at whatever time of the day it was made', () => {
      process.env['TZ'] = zone;
      for (const day of days) {
        const [year, month, date] = day.split('-').map(Number) as [number, number, number];
        for (const hour of [0, 12, 23]) {
          const made = new Date(year, month - 1, date, hour, 30).getTime();
          expect(dayOf(made)).toBe(day);
          expect(told(made, addDays(day, 14))).toEqual([]);
          expect(told(made, addDays(day, 15))).toEqual(['last file 15 days old']);
        }
      }
    });
  },
);

it('a day long ago has its date, with the year where that is another; one far ahead was a wrong clock', () => {
  const today = '2026-11-25';
  expect(practiceText('2026-11-10', today)).toBe('10\u00A0Nov');
  expect(practiceText('2025-11-10', today)).toBe('10\u00A0Nov 2025');
  expect(practiceText('2099-03-03', today)).toBe('3 March 2099');
  expect(practiceText(null, today)).toBe('not yet');
});
