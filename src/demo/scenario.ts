/** The invented scenario: who, what for, and what happened on the way. Nobody like this exists. */
import { addDays } from '../../shared/log/day';
import type { Day, EventBody } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';

export const DEMO_NAME = 'Fermata Quillfeather (invented)';
export const SEED = 9;

/** Days of the history, and days left from the day on which one looks to the invented examination. */
export const DAYS = 70;
const DAYS_LEFT = 26;

/** What is recorded before the first day. */
export const SETUP = (today: Day): readonly EventBody[] => [
  { kind: 'name', name: DEMO_NAME },
  {
    kind: 'programme',
    programme: {
      ...DEFAULT_PROGRAMME,
      stages: {
        'right.2': { asked: true, target: 240 },
        'left.2': { asked: true, target: 240 },
        'together.2': { asked: true, target: 208 },
        'together.4': { asked: true, target: 136 },
        'together.contrary': { asked: true, target: 120 },
      },
      reached: 'left.2',
      minutes: 15,
      date: addDays(today, DAYS_LEFT),
    },
  },
];

/** Days, counted from 0, on which the piano stayed shut: a week away. */
export const isAway = (day: number): boolean => day >= 38 && day <= 44;

/** Days on which the teacher judges the first entry. */
export const isLesson = (day: number): boolean => day % 7 === 5;

const remark = (text: string): EventBody => ({ kind: 'remark', about: null, text, by: 'teacher' });

const HAPPENINGS: Readonly<Partial<Record<number, readonly EventBody[]>>> = {
  12: [remark('Wrist level when the thumb passes under; the elbow does not turn out.')],
  33: [remark('Left hand alone first, at half tempo, then both.')],
  50: [{ kind: 'aside', item: 'b.dominant-42.together.4', aside: true }],
  61: [
    {
      kind: 'remark',
      about: 'f.dominant-42.together.2',
      text: 'Listen for the join at the thumb, coming down.',
    },
  ],
};

/** What else was recorded on a day, before practice. */
export const happenings = (day: number): readonly EventBody[] => HAPPENINGS[day] ?? [];
