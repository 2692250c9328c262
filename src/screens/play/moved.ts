/** What a day's playing has moved: reach before and after, and stages that have opened. Pure; for the end of the list. */
import { addDays } from '../../../shared/log/day';
import type { Day, RunEvent } from '../../../shared/log/events';
import {
  itemAt,
  itemOf,
  type ItemId,
  STAGES,
  type Stage,
  type StartingNote,
  type Way,
} from '../../../shared/music/deck';
import type { Tempo } from '../../../shared/music/tempo';
import { reachOf } from '../../../shared/learning/prediction';
import type { Student } from '../../../shared/planning/student';
import { minutesOn } from '../../../shared/planning/dates';
import { lastStageOf } from '../../../shared/planning/stages';
import { type DayPlan, planDay } from '../../../shared/planning/today';

/** The items of one starting note and way that were played. */
export interface Moved {
  readonly note: StartingNote;
  readonly way: Way;
  readonly items: number;
  /** Geometric means. */
  readonly before: Tempo;
  readonly after: Tempo;
}

export interface Opened {
  readonly stage: Stage;
  /** How many arpeggios have it open that had not this morning. */
  readonly arpeggios: number;
}

const mean = (tempos: readonly Tempo[]): Tempo =>
  2 ** (tempos.reduce((sum, tempo) => sum + Math.log2(tempo), 0) / tempos.length);

/** In the order in which they were first played. */
export function movedBy(
  runs: readonly RunEvent[],
  before: Student,
  after: Student,
  day: Day,
): readonly Moved[] {
  const groups = new Map<string, Set<ItemId>>();
  for (const { item } of runs) {
    const { note, way } = itemOf(item);
    const group = groups.get(`${note} ${way}`) ?? new Set();
    groups.set(`${note} ${way}`, group.add(item));
  }
  return [...groups.values()].map((ids) => {
    const items = [...ids].map(itemOf);
    const reaches = (student: Student) =>
      items.map((item) => reachOf(student.learner, item, day).tempo);
    const { note, way } = items[0]!;
    return {
      note,
      way,
      items: items.length,
      before: mean(reaches(before)),
      after: mean(reaches(after)),
    };
  });
}

/** Whether the programme leads an arpeggio, by index, to a stage, by index. */
const isAsked = ({ programme }: Student, arpeggio: number, stage: number): boolean =>
  programme !== null && stage <= lastStageOf(programme, itemAt(arpeggio, STAGES[0]).chord);

/** Stages that today's runs have opened, easiest first. */
export function openedBy(before: Student, after: Student): readonly Opened[] {
  return STAGES.map((stage, index) => ({
    stage,
    arpeggios: after.stages.open.filter(
      (open, arpeggio) =>
        open >= index && before.stages.open[arpeggio]! < index && isAsked(after, arpeggio, index),
    ).length,
  })).filter(({ arpeggios }) => arpeggios > 0);
}

/** Arpeggios played today whose stage opens the next one if it is even on one more day. */
export function nearlyOpen(runs: readonly RunEvent[], after: Student): readonly Opened[] {
  const counts = new Map<Stage, number>();
  for (const arpeggio of new Set(runs.map(({ item }) => itemOf(item).arpeggioIndex))) {
    const open = after.stages.open[arpeggio]!;
    const next = STAGES[open + 1];
    const isHalfway = after.stages.evenDays[itemAt(arpeggio, STAGES[open]!).index] === 1;
    if (next !== undefined && isHalfway && isAsked(after, arpeggio, open + 1)) {
      counts.set(next, (counts.get(next) ?? 0) + 1);
    }
  }
  return STAGES.flatMap((stage) => {
    const arpeggios = counts.get(stage);
    return arpeggios === undefined ? [] : [{ stage, arpeggios }];
  });
}

/** The list of the next day, should nothing be played until then. */
export function planTomorrow(student: Student, day: Day): DayPlan {
  const { programme } = student;
  const next = addDays(day, 1);
  return planDay(student, next, programme === null ? 0 : minutesOn(programme, next));
}
