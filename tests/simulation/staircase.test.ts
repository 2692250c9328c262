/** That the rotations by ear do what their description says, as the aims are held against them. */
import { describe, expect, it } from 'vitest';
import { dayOfNumber } from '../../shared/log/day';
import type { Fluency } from '../../shared/log/events';
import { stageIndex } from '../../shared/music/deck';
import { newStudent } from '../../shared/planning/student';
import { FIRST_DAY, programmeFor } from './courses';
import type { MakePlanner, Task } from './planners/planner';
import { nextNoteByStaircase, noteADayByStaircase } from './planners/staircase';
import { makeLearner } from './student-life';

const learner = makeLearner({ family: 'skill', group: 'uniform', number: 0, seed: 3 });

/** What is planned over some days when each run comes out the same. */
function planned(make: MakePlanner, fluency: Fluency, days: number): readonly (readonly Task[])[] {
  const planner = make(learner, () => 0.5, programmeFor(learner.traits, 20));
  return Array.from({ length: days }, (_, practised) => {
    const number = FIRST_DAY + practised;
    const day = dayOfNumber(number);
    const morning = { student: newStudent(), day, number, practised, seconds: 1200, sitting: 1 };
    const tasks: Task[] = [];
    for (const task of planner.plan(morning)) {
      tasks.push(task);
      for (const item of task.items) planner.noteRun!(item, fluency, { number, tempo: task.tempo });
    }
    return tasks;
  });
}

const tempi = (tasks: readonly Task[]): readonly number[] => tasks.map(({ tempo }) => tempo);
const notes = (tasks: readonly Task[]): ReadonlySet<string> =>
  new Set(tasks.map(({ items }) => items[0]!.note));

describe('a rotation by ear', () => {
  it('begins at half the target and moves up or down a notch with each round of a note', () => {
    const up = tempi(planned(noteADayByStaircase, 3, 1)[0]!);
    const down = tempi(planned(noteADayByStaircase, 1, 1)[0]!);
    expect([up[0], down[0]]).toEqual([120, 120]);
    expect(up.slice(0, 4)).toEqual([120, 132, 144, 160]);
    expect(down.slice(0, 3)).toEqual([120, 116, 112]);
  });

  it('keeps to one note for a day, or takes the next with each round', () => {
    const aDay = planned(noteADayByStaircase, 3, 2).map((tasks) => [...notes(tasks)]);
    expect(aDay).toEqual([['c'], ['d']]);
    expect(notes(planned(nextNoteByStaircase, 3, 1)[0]!).size).toBe(7);
  });

  it('opens a stage after two days, and looks back with every fifth round of a note', () => {
    const days = planned(nextNoteByStaircase, 3, 12);
    const ways = days.map((tasks) => [...new Set(tasks.map(({ items }) => items[0]!.way))]);
    expect(ways[0]).toEqual(['right.2']);
    expect(ways[1]).toContain('left.2');
    const ofC = days.flat().filter(({ items }) => items[0]!.note === 'c');
    const stages = ofC.map(({ items }) => stageIndex(items[0]!.way));
    expect(stages[9]).toBeLessThan(stages[8]!);
    expect(stages[10]).toBeGreaterThanOrEqual(stages[8]!);
  });

  it('fits the minutes', () => {
    const seconds = planned(nextNoteByStaircase, 3, 3).map((tasks) =>
      tasks.reduce((sum, task) => sum + task.seconds, 0),
    );
    expect(Math.max(...seconds)).toBeLessThanOrEqual(1200);
    expect(Math.min(...seconds)).toBeGreaterThan(1000);
  });
});
