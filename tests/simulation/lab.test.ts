/** That the lab can be trusted: what its students know, what it measures, and that the same seed says the same. */
import { describe, expect, it } from 'vitest';
import { dayOfNumber } from '../../shared/log/day';
import { askedStages, DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { itemOf } from '../../shared/music/deck';
import { applyEvents, newStudent } from '../../shared/planning/student';
import { Calibration } from './calibration';
import { FAMILIES, GROUPS } from './learner';
import { PLANNERS } from './planners';
import { COURSES } from './courses';
import { FIRST_DAY, live, makeLearner, programmeFor, stamped } from './student-life';

const RIGHT = itemOf('d.major-6.right.2').index;
const TOGETHER = itemOf('d.major-6.together.4').index;

describe.each(FAMILIES)('a learner of the family "%s"', (family) => {
  const made = () => makeLearner({ family, group: 'uniform', number: 0, seed: 3 });
  const practised = (days: readonly number[], times = 3) => {
    const { truth } = made();
    for (const day of days) {
      for (let i = 0; i < times; i++) truth.practise(TOGETHER, FIRST_DAY + day, 1);
    }
    return (day: number) => truth.level(TOGETHER, FIRST_DAY + day);
  };

  it('gains by practice, and loses by a pause', () => {
    const [before, after] = [practised([])(20), practised([0, 3, 6, 10, 15, 20])];
    expect(after(20)).toBeGreaterThan(before);
    expect(after(80)).toBeLessThan(after(20));
    expect(after(80)).toBeGreaterThan(before - 0.05);
  });

  it('keeps more of what was spread over days than of what was massed', () => {
    const spaced = practised([0, 3, 6, 9, 12, 15]);
    const massed = practised([15], 18);
    expect(spaced(45)).toBeGreaterThan(massed(45));
  });

  it('plays hands together better after practice of single hands', () => {
    const { truth } = made();
    const before = truth.level(TOGETHER, FIRST_DAY);
    for (const hand of ['right', 'left'] as const) {
      const { index } = itemOf(`d.major-6.${hand}.4`);
      for (let day = 0; day < 10; day++) truth.practise(index, FIRST_DAY + day, 1);
    }
    expect(truth.level(TOGETHER, FIRST_DAY + 10)).toBeGreaterThan(before);
  });

  it('is the same with the same seed, and restored by its state', () => {
    const [one, other] = [made(), made()];
    const kept = one.truth.state.slice();
    const play = () => Array.from({ length: 40 }, (_, i) => one.play(RIGHT, 5.5, FIRST_DAY + i));
    expect(play()).toEqual(
      Array.from({ length: 40 }, (_, i) => other.play(RIGHT, 5.5, FIRST_DAY + i)),
    );
    one.truth.state.set(kept);
    expect(one.truth.level(RIGHT, FIRST_DAY)).toBe(made().truth.level(RIGHT, FIRST_DAY));
  });

  it('comes out even as often as its chance says', () => {
    const learner = made();
    const mark = learner.truth.level(RIGHT, FIRST_DAY) - 0.1;
    const { rated } = learner.chanceEven(RIGHT, mark, FIRST_DAY);
    const kept = learner.truth.state.slice();
    let even = 0;
    for (let i = 0; i < 3000; i++) {
      // Two runs to get warm on a day of its own.
      learner.play(RIGHT, mark, FIRST_DAY + i);
      learner.play(RIGHT, mark, FIRST_DAY + i);
      learner.truth.state.set(kept);
      if (learner.play(RIGHT, mark, FIRST_DAY + i) >= 3) even += 1;
      learner.truth.state.set(kept);
    }
    expect(Math.abs(even / 3000 - rated)).toBeLessThan(0.03);
  });
});

describe('the groups', () => {
  it('differ in what they start from', () => {
    const levels = GROUPS.map((group) =>
      Array.from({ length: 40 }, (_, number) =>
        makeLearner({ family: 'skill', group, number, seed: 5 }).truth.level(TOGETHER, FIRST_DAY),
      ).reduce((sum, level) => sum + level / 40, 0),
    );
    const [uniform, uneven, beginner] = levels;
    expect(beginner).toBeLessThan(uniform!);
    expect(uneven).toBeLessThan(uniform!);
  });
});

/** Of two students, who both get there. */
const daysOf = (planner: 'app' | 'told') =>
  [0, 1].reduce((sum, number) => {
    const life = { family: 'traces', group: 'uniform', number, seed: 51, minutes: 20 } as const;
    return sum + live(life, { planner: PLANNERS[planner] }).days!;
  }, 0);

describe('the app that is told the levels', () => {
  it('needs fewer days than the one that has to find them out', () => {
    expect(daysOf('told')).toBeLessThan(daysOf('app'));
  });

  it('is told by a copy: what is known of the student stays as it was', () => {
    const player = makeLearner({ family: 'traces', group: 'uniform', number: 0, seed: 51 });
    const programme = programmeFor(player.traits, 20);
    const student = newStudent();
    applyEvents(student, [stamped({ kind: 'programme', programme }, FIRST_DAY)], new Set());
    const day = dayOfNumber(FIRST_DAY);
    const morning = { student, day, number: FIRST_DAY, practised: 0, seconds: 1200, sitting: 1 };
    const kept = structuredClone(student.learner);
    const planned = (planner: 'app' | 'told') => [
      ...PLANNERS[planner](player, player.random.share, programme).plan(morning),
    ];
    expect(planned('told')).not.toEqual(planned('app'));
    expect(student.learner).toEqual(kept);
  });
});

describe('the courses', () => {
  it('have one in which each stage is asked for that the app proposes', () => {
    const { traits } = makeLearner({ family: 'skill', group: 'uniform', number: 0, seed: 1 });
    const programme = programmeFor(traits, 20, COURSES.stages);
    expect(askedStages(programme)).toEqual(askedStages(DEFAULT_PROGRAMME));
    expect(askedStages(programme)).toEqual(COURSES.stages.goals);
    expect(new Set(COURSES.stages.goals.map((stage) => programme.stages[stage].target)).size).toBe(
      1,
    );
  });
});

describe('the measures', () => {
  it('give the Brier score and the calibration error of forecasts known by hand', () => {
    const calibration = new Calibration();
    for (const happened of [1, 1, 1, 0]) calibration.add(0.85, happened);
    for (const happened of [0, 0, 1, 0]) calibration.add(0.25, happened);
    expect(calibration.brier).toBeCloseTo(
      (3 * 0.15 ** 2 + 0.85 ** 2 + 3 * 0.25 ** 2 + 0.75 ** 2) / 8,
      12,
    );
    expect(calibration.error).toBeCloseTo((4 * 0.1) / 8, 12);
    const sum = new Calibration();
    sum.merge(calibration.sums);
    sum.merge(calibration.sums);
    expect(sum.error).toBeCloseTo(calibration.error, 12);
    expect(sum.count).toBe(16);
  });

  it('take a true probability for the mean over outcomes', () => {
    const [known, sampled] = [new Calibration(), new Calibration()];
    known.add(0.6, 0.75);
    for (const happened of [1, 1, 1, 0]) sampled.add(0.6, happened);
    expect(known.brier).toBeCloseTo(sampled.brier, 12);
  });

  it('come out the same for the same life', () => {
    const life = { family: 'traces', group: 'uneven', number: 3, seed: 9, minutes: 12 } as const;
    const once = () => live(life, { planner: PLANNERS.back });
    expect(once()).toEqual(once());
  });
});
