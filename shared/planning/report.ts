/** What the readiness report says, as numbers. The words and the layout are in src/screens/report. */
import { addDays } from '../log/day';
import type { Day, ReportBody } from '../log/events';
import type { ExaminationSettings } from '../log/examination';
import { askedStages, type Programme, targetFor, targetRange } from '../log/programme';
import type { Item, Stage } from '../music/deck';
import type { Tempo } from '../music/tempo';
import { type Reach, reachOf } from '../learning/prediction';
import { deckOf, itemsAsked, type Readiness, readinessOf } from '../learning/readiness';
import { minutesOn } from './dates';
import { defaultSettings, settingsFor } from './examination/draw';
import { type Forecast, forecastOf } from './examination/forecast';
import { progressOf, type StageProgress } from './progress';
import type { Examination, LastRun, Remark, Student } from './student';
import { type DayPlan, planDay } from './today';
import { ratedJoins, type WeakJoin } from './weak-joins';
import { type Week, weeksOf } from './weeks';

export interface StageLine {
  readonly stage: Stage;
  /** The slowest and the fastest that is asked for. */
  readonly targets: readonly [Tempo, Tempo];
  /** The middle one of the reaches of its items, today. */
  readonly reach: Tempo;
  /** Mean chance on the date of the report. */
  readonly share: number;
  readonly items: number;
  /** Of these, those that were played at least once. */
  readonly played: number;
}

export interface WeakItem {
  readonly item: Item;
  readonly target: Tempo;
  /** Today. */
  readonly reach: Reach;
  /** On the date of the report. */
  readonly chance: number;
  readonly last: LastRun;
}

/** The chance to pass a drawn examination on the date of the report. */
export interface PassForecast extends Forecast {
  readonly settings: ExaminationSettings;
}

/** What is otherwise than in the report that was handed out last. */
export interface Change {
  /** Of the last report. */
  readonly day: Day;
  /** Readiness on that day, and today; 0 to 1. */
  readonly share: readonly [before: number, now: number];
  readonly played: readonly [before: number, now: number];
  readonly stages: readonly { readonly stage: Stage; readonly share: readonly [number, number] }[];
  /** Practice after that day. */
  readonly days: number;
  readonly runs: number;
}

export interface Report {
  readonly today: Day;
  /** The day that readiness is given for: that of the programme, or today if it has none or it is over. */
  readonly date: Day;
  readonly onDate: Readiness;
  readonly now: Readiness;
  readonly stages: readonly StageLine[];
  readonly played: number;
  /** Few of the items have been played, so most of the readiness is inferred from the others. */
  readonly isThin: boolean;
  readonly pass: PassForecast;
  /** Null where none was handed out before today. */
  readonly change: Change | null;
  readonly weakest: readonly WeakItem[];
  readonly joins: readonly WeakJoin[];
  /** Reach over time; empty in the first week. */
  readonly progress: readonly StageProgress[];
  /** The list of the next day of practice. */
  readonly planned: DayPlan;
  /** All by the teacher, newest first. */
  readonly teacherRemarks: readonly Remark[];
  /** All that were held, newest first. */
  readonly examinations: readonly Examination[];
  readonly weeks: readonly Week[];
  readonly aside: readonly Item[];
}

const WEEKS = 12;
/** Lines of the table of weakest items; each stage gets its part of them, so that no stage hides another. */
const WEAKEST = 10;
const FEWEST_OF_A_STAGE = 2;
/** Share of the deck below which the evidence is called thin. */
const THIN = 0.5;

export function reportOf(student: Student, programme: Programme, today: Day): Report {
  const date = programme.date !== null && programme.date > today ? programme.date : today;
  const { learner } = student;
  const onDate = readinessOf(learner, programme, date);
  const now = readinessOf(learner, programme, today);
  const deck = deckOf(programme);
  const isPlayed = (item: Item): boolean => student.lastRuns.has(item.id);
  const stages = askedStages(programme).map((stage): StageLine => {
    const items = itemsAsked(programme, stage);
    return {
      stage,
      targets: targetRange(programme, stage),
      reach: middleOf(items.map((item) => reachOf(learner, item, today).tempo)),
      share: onDate.byStage.get(stage)!,
      items: items.length,
      played: items.filter(isPlayed).length,
    };
  });
  const played = deck.filter(isPlayed).length;
  const weakest = weakestOf(student, programme, onDate, today);
  // What was played today has had its list.
  const next = student.work.has(today) ? addDays(today, 1) : today;
  return {
    today,
    date,
    onDate,
    now,
    stages,
    played,
    isThin: played < THIN * deck.length,
    pass: passOf(student, programme, date),
    change: changeOf(student, now, played, today),
    weakest,
    joins: ratedJoins(student, weakest),
    progress: progressOf(student, programme, today),
    planned: planDay(student, next, minutesOn(programme, next)),
    teacherRemarks: student.remarks.filter(({ by }) => by === 'teacher').toReversed(),
    examinations: student.examinations.toReversed(),
    weeks: weeksOf(student.work, today, WEEKS),
    aside: deck.filter((item) => student.aside.has(item.id)),
  };
}

/** The lower of the two middle ones where their number is even. */
const middleOf = (tempos: readonly Tempo[]): Tempo =>
  tempos.toSorted((a, b) => a - b)[Math.floor((tempos.length - 1) / 2)]!;

/** As in the last examination that was held, as far as the programme still asks for it. */
function passOf(student: Student, programme: Programme, day: Day): PassForecast {
  const last = student.examinations.at(-1);
  const settings = (last && settingsFor(programme, last.settings)) ?? defaultSettings(programme);
  return { settings, ...forecastOf({ learner: student.learner, programme, settings, day }) };
}

/** What a report of today would put into the log. */
export const handedOut = ({ now, played }: Report): ReportBody => ({
  kind: 'report',
  share: now.share,
  stages: [...now.byStage].map(([stage, share]) => ({ stage, share })),
  played,
});

/** A report of the same day is the same report, so it shows what the one before it did. */
function changeOf(
  { reports, work }: Student,
  now: Readiness,
  played: number,
  today: Day,
): Change | null {
  const last = reports.findLast(({ day }) => day < today);
  if (last === undefined) return null;
  const since = [...work].filter(([day]) => day > last.day).map(([, { runs }]) => runs);
  return {
    day: last.day,
    share: [last.share, now.share],
    played: [last.played, played],
    stages: last.stages.flatMap(({ stage, share }) => {
      const current = now.byStage.get(stage);
      return current === undefined ? [] : [{ stage, share: [share, current] as const }];
    }),
    days: since.length,
    runs: since.reduce((sum, runs) => sum + runs, 0),
  };
}

/** The weakest items of each stage that have been played and are not set aside, by their chance on the date. */
function weakestOf(
  student: Student,
  programme: Programme,
  { chances }: Readiness,
  today: Day,
): readonly WeakItem[] {
  const stages = askedStages(programme);
  const ofEach = Math.max(FEWEST_OF_A_STAGE, Math.floor(WEAKEST / Math.max(1, stages.length)));
  return stages.flatMap((stage) =>
    itemsAsked(programme, stage)
      .filter((item) => student.lastRuns.has(item.id) && !student.aside.has(item.id))
      .map((item): WeakItem => ({
        item,
        target: targetFor(programme, item),
        reach: reachOf(student.learner, item, today),
        chance: chances.get(item.id)!,
        last: student.lastRuns.get(item.id)!,
      }))
      .toSorted((a, b) => a.chance - b.chance || a.item.index - b.item.index)
      .slice(0, ofEach),
  );
}
