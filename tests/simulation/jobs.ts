/** The lives that the lab lets be lived, in portions that two threads can share. */
import { Calibration } from './calibration';
import type { CourseName } from './courses';
import { FAMILIES, type FamilyName, type GroupName } from './learner';
import { PLANNERS, type PlannerName } from './planners';
import { live, type Outcome } from './student-life';

/** Kind of student, minutes a day, and what is asked if it is not the usual. */
export interface Cell {
  readonly group: GroupName;
  readonly minutes: number;
  readonly course?: CourseName;
}

export const CELLS: readonly Cell[] = [
  { group: 'uniform', minutes: 12 },
  { group: 'uniform', minutes: 20 },
  { group: 'uneven', minutes: 12 },
  { group: 'uneven', minutes: 20 },
  { group: 'beginner', minutes: 20 },
];

/** Other courses and days, for the app and one rotation that needs no model. */
export const OTHER_CELLS: readonly Cell[] = [
  { group: 'uniform', minutes: 5 },
  { group: 'uniform', minutes: 20, course: 'sittings' },
  { group: 'uniform', minutes: 20, course: 'stages' },
  { group: 'uneven', minutes: 12, course: 'stages' },
  { group: 'uniform', minutes: 20, course: 'contrary' },
  { group: 'uniform', minutes: 20, course: 'twelve' },
  { group: 'uneven', minutes: 20, course: 'undated' },
  { group: 'uneven', minutes: 20, course: 'dated' },
];
export const OTHER_PLANNERS: readonly PlannerName[] = ['app', 'stairBack'];

export interface Job extends Cell {
  readonly family: FamilyName;
  readonly planner: PlannerName;
  readonly seed: number;
  readonly students: number;
}

export interface JobResult {
  readonly job: Job;
  readonly outcomes: readonly Outcome[];
  readonly atTarget: readonly number[];
  readonly nextRun: readonly number[];
}

export interface Extent {
  readonly seed: number;
  readonly students: number;
  /** The oracle takes long. */
  readonly oracleStudents: number;
  /** In the other cells. */
  readonly otherStudents: number;
}

export function jobsOf(extent: Extent): readonly Job[] {
  const { seed, students, oracleStudents, otherStudents } = extent;
  return FAMILIES.flatMap((family) => [
    ...CELLS.flatMap((cell) =>
      (Object.keys(PLANNERS) as PlannerName[]).map((planner) => {
        const count = planner === 'oracle' ? oracleStudents : students;
        return { ...cell, family, planner, seed, students: count };
      }),
    ),
    ...OTHER_CELLS.flatMap((cell) =>
      OTHER_PLANNERS.map((planner) => ({
        ...cell,
        family,
        planner,
        seed,
        students: otherStudents,
      })),
    ),
  ]);
}

export const isSameCell = (a: Cell, b: Cell): boolean =>
  a.group === b.group && a.minutes === b.minutes && a.course === b.course;

export function work(job: Job): JobResult {
  const atTarget = new Calibration();
  const nextRun = new Calibration();
  const isMeasured = job.planner === 'app' && CELLS.some((cell) => isSameCell(cell, job));
  const outcomes = Array.from({ length: job.students }, (_, number) =>
    live(
      { ...job, number },
      { planner: PLANNERS[job.planner], ...(isMeasured && { atTarget, nextRun }) },
    ),
  );
  return { job, outcomes, atTarget: atTarget.sums, nextRun: nextRun.sums };
}
