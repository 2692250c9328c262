/** What came of all lives, by family, cell and way of planning. */
import { Calibration } from './calibration';
import { type Cell, isSameCell, type JobResult } from './jobs';
import type { FamilyName } from './learner';
import { PLANNER_TEXTS, type PlannerName } from './planners';
import { LONGEST, type Outcome } from './student-life';
import { mean } from './table';

export const NAMES = Object.keys(PLANNER_TEXTS) as PlannerName[];

export const cellText = ({ group, minutes }: Cell): string => `${group}, ${minutes} minutes`;

/** Mean days to 90 %; those who do not get there count as LONGEST, which flatters the slower ways. */
export const meanDays = (outcomes: readonly Outcome[]): number =>
  mean(outcomes.map(({ days }) => days ?? LONGEST));

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

  /** Days of the app as a share of another way's. */
  ratio(family: FamilyName, cell: Cell, other: PlannerName): number {
    return (
      meanDays(this.outcomes(family, cell, 'app')) / meanDays(this.outcomes(family, cell, other))
    );
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

  /** What the best in hindsight reaches, as a share of another way's days on the same students. */
  attainable(family: FamilyName, cell: Cell, other: PlannerName): number {
    const best = this.best(family, cell);
    return meanDays(best) / meanDays(this.outcomes(family, cell, other).slice(0, best.length));
  }
}
