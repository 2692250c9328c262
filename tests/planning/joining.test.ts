import { describe, expect, it } from 'vitest';
import type { LogEvent } from '../../shared/log/events';
import {
  roundItems,
  type StartingNote,
  STARTING_NOTES,
  WHITE_NOTES,
} from '../../shared/music/deck';
import { joinedNotes } from '../../shared/planning/joining';
import { replay } from '../../shared/planning/student';
import { planDay } from '../../shared/planning/today';
import { programme, run, START } from '../learning/events';

/** Even at half the target on two days: the right hand holds from these notes. */
const held = (...notes: readonly StartingNote[]): readonly LogEvent[] =>
  [0, 1].flatMap((day) =>
    notes.flatMap((note) =>
      roundItems(note, 'right.2').map(({ id }) => run(id, day === 0 ? 3 : 4, 160, day)),
    ),
  );

function joined(...events: readonly LogEvent[]) {
  const student = replay(events);
  return joinedNotes(student, student.programme!);
}

const ALL = programme({ notes: STARTING_NOTES });
const blacks = (...notes: readonly StartingNote[]) =>
  joined(ALL, ...held(...notes)).filter((note) => !WHITE_NOTES.some((white) => white === note));

describe('black starting notes', () => {
  it('BLACK: wait until white ones hold, and then join one by one', () => {
    expect(joined(ALL)).toEqual(WHITE_NOTES);
    expect(blacks('c', 'd')).toEqual([]);
    expect(blacks('c', 'd', 'e')).toEqual(['db']);
    expect(blacks('c', 'd', 'e', 'f', 'g')).toEqual(['db', 'eb', 'gb']);
    expect(joined(ALL, ...held(...WHITE_NOTES))).toEqual(STARTING_NOTES);
  });

  it('BLACK: are not on the first list of a programme of all twelve', () => {
    const { entries } = planDay(replay([ALL]), START, 60);
    expect(new Set(entries.map(({ note }) => note))).toEqual(new Set(WHITE_NOTES));
  });

  it('BLACK: do not go away again once one of them has been played', () => {
    expect(joined(ALL, run('ab.major-6.right.2', 1, 60))).toEqual([...WHITE_NOTES, 'ab']);
  });

  it('BLACK: come at once where few white ones are asked for, or all has been reached', () => {
    expect(joined(programme({ notes: ['c', 'd', 'gb'] }))).toEqual(['c', 'd', 'gb']);
    expect(joined(programme({ notes: ['eb', 'gb'] }))).toEqual(['eb', 'gb']);
    expect(joined(programme({ notes: STARTING_NOTES, reached: 'together.4' }))).toEqual(
      STARTING_NOTES,
    );
  });
});
