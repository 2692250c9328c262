/** What came of all lives, by family, cell and way of planning. */
import { Calibration } from './calibration';
import { type Cell, isSameCell, type JobResult } from './jobs';
import type { FamilyName } from './learner';
import { PLANNER_TEXTS, type PlannerName } from './planners';
import { LONGEST, type Outcome } from './student-life';
import { mean } from './table';

export const NAMES = Object.keys(PLANNER_TEXTS) as PlannerName[];

export const cellText = ({ group, minutes }: Cell): string => `${group}, ${minutes} minutes`;

/** Mean days to 90 %; those who do not get there count as LONGEST. */
export const meanDays = (outcomes: readonly Outcome[]): number =>
  mean(outcomes.map(({ days }) => days ?? LONGEST));

type Pair = readonly [Outcome, Outcome];

/**
 * The lives of the same students in two ways, of those whom the second brings there at all: what is beyond a student
 * for good tells nothing of a way, and would count as much as the time for which the lab follows anyone.
 */
export const there = (ours: readonly Outcome[], others: readonly Outcome[]): readonly Pair[] =>
  ours.map((our, i): Pair => [our, others[i]!]).filter(([, other]) => other.days !== null);

/** Days of the first as a share of those of the second; null if there are none. */
export function ratioOf(pairs: readonly Pair[]): number | null {
  if (pairs.length === 0) return null;
  return meanDays(pairs.map(([our]) => our)) / meanDays(pairs.map(([, other]) => other));
}

export class Book {
  constructor(readonly results: readonly JobResult[]) {}

  outcomes(family: FamilyName, cell: Cell, planner: PlannerName): readonly Outcome[] {
    return this.results
      .filter(({ job }) => job.family === family && job.planner === planner)
      .filter(({ job }) => isSameCell(job, cell))
      .flatMap(({ outcomes }) => outcomes);
  }

  calibration(family: FamilyName, key: 'atTarget' | 'nextRun'): Calibration {
    const sum = new Calibration();
    for (const result of this.results) {
      if (result.job.family === family && result.job.planner === 'app') sum.merge(result[key]);
    }
    return sum;
  }

  /**
   * For each student the outcome of the way that was best for this one, chosen in hindsight from all that are compared,
   * the one that sees the truth among them: better than every row by its making, and more than any planner can know.
   */
  best(family: FamilyName, cell: Cell): readonly Outcome[] {
    const ways = NAMES.map((name) => this.outcomes(family, cell, name));
    const students = Math.min(...ways.map((way) => way.length));
    return Array.from({ length: students }, (_, number) => {
      const lives = ways.map((way) => way[number]!);
      const days = Math.min(...lives.map((life) => life.days ?? LONGEST));
      const share = Math.max(...lives.map((life) => life.share));
      return { ...lives[0]!, days: days < LONGEST ? days : null, share };
    });
  }
}
