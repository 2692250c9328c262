import { describe, expect, it } from 'vitest';
import type { LogEvent } from '../../shared/log/events';
import type { Programme } from '../../shared/log/programme';
import { itemOf, type ItemId, roundItems } from '../../shared/music/deck';
import { planDay } from '../../shared/planning/today';
import { reasonText } from '../../shared/planning/reasons';
import { replay } from '../../shared/planning/student';
import { turnOf, turnText } from '../../shared/planning/turns';
import { addDays } from '../../shared/log/day';
import { programme, run, START } from '../learning/events';

const RIGHT: ItemId = 'd.major-6.right.2';
const LEFT: ItemId = 'd.major-6.left.2';
const TOGETHER: ItemId = 'd.major-6.together.2';

/** Events are made after the programme, as their ids give their order. */
type Log = () => readonly LogEvent[];

const turnAfter = (id: ItemId, log: Log, change?: Partial<Programme>) => {
  const begin = programme(change);
  return turnOf(replay([begin, ...log()]), itemOf(id));
};
const told = (id: ItemId, log: Log, change?: Partial<Programme>): string | null => {
  const turn = turnAfter(id, log, change);
  return turn && `${turn.day}${turnText(turn, 4)}`;
};

const rightHolds = () => [run(RIGHT, 3, 256), run(RIGHT, 2, 300), run(RIGHT, 3, 264, 2)];
const leftHolds = () => [run(LEFT, 3, 240, 3), run(LEFT, 3, 252, 5), run(LEFT, 4, 260, 5)];
const bothHold = () => [...rightHolds(), ...leftHolds()];
/** Hands together from D, on a day when only the right hand is open. */
const shown = (chords: number) => () =>
  roundItems('d', 'together.2')
    .slice(0, chords)
    .map(({ id }) => run(id, 3, 200, 1));

describe('why a stage has opened or closed', () => {
  it('is told with the two even days of the stage below', () => {
    expect(told(LEFT, rightHolds)).toBe('2026-01-07: right hand even at 64 and 66 on two days');
  });

  it('is told with both hands where they come together, and with the marks of the grouping', () => {
    expect(told(TOGETHER, bothHold)).toBe(
      '2026-01-10: right hand even at 64 and 66 on two days, left hand at 60 and 63',
    );
    expect(turnText(turnAfter(TOGETHER, bothHold)!, 3)).toContain('right hand even at 85 and 88');
  });

  it('stays as it was when the stage below is played again later', () => {
    const later = () => [...rightHolds(), ...[9, 12].map((day) => run(RIGHT, 4, 400, day))];
    expect(told(LEFT, later)).toBe(told(LEFT, rightHolds));
  });

  it('is nothing where the programme opened it, or nothing has', () => {
    expect(told(RIGHT, rightHolds)).toBeNull();
    expect(told(TOGETHER, rightHolds)).toBeNull();
    expect(told(LEFT, rightHolds, { reached: 'together.2' })).toBeNull();
    expect(told('d.major-6.right.4', rightHolds)).toBeNull();
  });

  it('forgets what a programme with another stage reached sets anew', () => {
    expect(told(LEFT, () => [...rightHolds(), programme({ reached: 'left.2' })])).toBeNull();
  });

  it('is the run itself where a stage showed that it goes, and the note where most chords have it', () => {
    expect(told(TOGETHER, shown(3))).toBe('2026-01-06, as a run of it came out even');
    expect(told(LEFT, shown(3))).toBe('2026-01-06, as a run of it came out even');
    expect(told('d.diminished-7.together.2', shown(6))).toBe(
      '2026-01-06, as it is for most chords of the note',
    );
  });

  it('is that it did not hold where it closed', () => {
    const log = () => [
      run(RIGHT, 3, 130),
      run(RIGHT, 3, 130, 2),
      ...[3, 4, 5, 6, 7].map((day) => run(LEFT, 0, 80, day)),
    ];
    expect(told(LEFT, log)).toMatch(/^2026-01-\d\d, as it did not hold$/);
  });
});

describe('the reason of an entry that is new', () => {
  it('says when its stage opened and by what', () => {
    const begin = programme({ notes: ['d'] });
    const student = replay([begin, ...rightHolds()]);
    const plan = planDay(student, addDays(START, 3), 30);
    const entry = plan.entries.find(({ way }) => way === 'left.2')!;
    expect(reasonText(entry.reason, 4)).toMatch(
      /^New, opened( for major 6)? yesterday: right hand even at 64 and 66 on two days\. Likely even at \d+\.$/,
    );
  });
});
