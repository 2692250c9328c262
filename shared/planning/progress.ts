/** How far each stage has come, week by week: what nine items in ten had at least. */
import type { Day } from '../log/events';
import { askedStages, type Programme, targetOfMost } from '../log/programme';
import { type Stage, stageIndex } from '../music/deck';
import type { Tempo } from '../music/tempo';
import { milestoneOf } from './forecast';
import type { Student } from './student';

export interface StageProgress {
  readonly stage: Stage;
  readonly target: Tempo;
  /** Oldest first, the last of today. */
  readonly points: readonly { readonly day: Day; readonly tempo: Tempo }[];
}

/** Half a year: what lies further back is told by the marks at the edge. */
const WEEKS = 26;

/** Empty as long as there is nothing before today to compare with. */
export function progressOf(
  { learner, milestones }: Student,
  programme: Programme,
  today: Day,
): readonly StageProgress[] {
  const before = milestones.filter(({ day }) => day < today).slice(-WEEKS);
  if (before.length === 0) return [];
  const all = [...before, milestoneOf(learner, programme, today)];
  return askedStages(programme).map((stage) => ({
    stage,
    target: targetOfMost(programme, stage),
    points: all.map(({ day, tenths }) => ({ day, tempo: 4 * 2 ** tenths[stageIndex(stage)]! })),
  }));
}
