/** The lives that the lab lets be lived, in portions that two threads can share. */
import { Calibration } from './calibration';
import { FAMILIES, type FamilyName, type GroupName } from './learner';
import { PLANNERS, type PlannerName } from './planners';
import { live, type Outcome } from './student-life';

/** Kind of student and minutes a day. */
export interface Cell {
  readonly group: GroupName;
  readonly minutes: number;
}

export const CELLS: readonly Cell[] = [
  { group: 'uniform', minutes: 12 },
  { group: 'uniform', minutes: 20 },
  { group: 'uneven', minutes: 12 },
  { group: 'uneven', minutes: 20 },
  { group: 'beginner', minutes: 20 },
];

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
}

export const jobsOf = ({ seed, students, oracleStudents }: Extent): readonly Job[] =>
  FAMILIES.flatMap((family) =>
    CELLS.flatMap((cell) =>
      (Object.keys(PLANNERS) as PlannerName[]).map((planner) => ({
        ...cell,
        family,
        planner,
        seed,
        students: planner === 'oracle' ? oracleStudents : students,
      })),
    ),
  );

export function work(job: Job): JobResult {
  const atTarget = new Calibration();
  const nextRun = new Calibration();
  const isMeasured = job.planner === 'app';
  const outcomes = Array.from({ length: job.students }, (_, number) =>
    live(
      { ...job, number },
      { planner: PLANNERS[job.planner], ...(isMeasured && { atTarget, nextRun }) },
    ),
  );
  return { job, outcomes, atTarget: atTarget.sums, nextRun: nextRun.sums };
}
