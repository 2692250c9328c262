/** One invented student lives through days with one way of planning; what is measured on the way. */
import { dayOfNumber } from '../../shared/log/day';
import type { EventBody, LogEvent, RunEvent } from '../../shared/log/events';
import { type Item, roundItems } from '../../shared/music/deck';
import { chanceEven } from '../../shared/learning/prediction';
import { minutesOn } from '../../shared/planning/dates';
import { forecastOf, type Milestone, milestoneOf, WINDOW } from '../../shared/planning/forecast';
import { applyEvents, newStudent } from '../../shared/planning/student';
import { seededRandom } from '../../src/demo/random';
import {
  drawTraits,
  type FamilyName,
  type GroupName,
  isPractised,
  Learner,
  type Traits,
  type Truth,
} from './learner';
import type { Calibration } from './calibration';
import { type Course, type CourseName, COURSES, FIRST_DAY, programmeFor } from './courses';
import type { MakePlanner, Task } from './planners/planner';
import { componentsTruth } from './truths/components';
import { skillTruth } from './truths/skill';
import { tracesTruth } from './truths/traces';

export { FIRST_DAY, programmeFor } from './courses';

export const LONGEST = 600;
/** Whose forecasts are kept is followed for longer, so that it is known whether they came true. */
export const FOLLOWED = 900;
const SHARE_AIMED = 0.9;
const AWAY = 30;
const FORECAST_DAYS: ReadonlySet<number> = new Set([30, 60, 90, 120]);

const goalsOf = ({ notes, goals }: Course): readonly Item[] =>
  goals.flatMap((stage) => notes.flatMap((note) => roundItems(note, stage)));

const TRUTHS: Readonly<
  Record<FamilyName, (traits: Traits, random: ReturnType<typeof seededRandom>) => Truth>
> = {
  skill: skillTruth,
  traces: tracesTruth,
  components: componentsTruth,
};

export interface Life {
  readonly family: FamilyName;
  readonly group: GroupName;
  readonly number: number;
  readonly seed: number;
  readonly minutes: number;
  /** What is asked, if it is not the usual. */
  readonly course?: CourseName;
}

export interface Outcome {
  /** Days until 90 % of the items are ready in truth; null if not within LONGEST. */
  readonly days: number | null;
  /** Share ready in truth on the day of the milestone, and of these what is ready still after 30 days without practice. */
  readonly share: number;
  readonly kept: number;
  readonly runs: number;
  readonly forecasts: readonly PastForecast[];
  /** As `days`, but within FOLLOWED for those whose forecasts are kept. */
  readonly arrived: number | null;
}

/** Made on a day of the life, in days from then. */
export interface PastForecast {
  readonly made: number;
  readonly days: number;
  readonly soonest: number;
  readonly latest: number;
}

/** Days on which the forecast of four octaves is kept, to be held against what happened. */
const PROPHECY_DAYS: ReadonlySet<number> = new Set([42, 70, 98, 126, 154]);
const LAST_PROPHECY = Math.max(...PROPHECY_DAYS);
/** Before so many days the estimates move for what is learnt of the student, and not for what he has gained. */
const FIRST_DAYS = 7;

/** Spreads neighbouring seeds over all states of the generator. */
const scatter = (seed: number): number => Math.imul(seed ^ 0x9e37_79b9, 0x85eb_ca6b) ^ (seed << 7);

export const makeLearner = ({
  family,
  group,
  number,
  seed,
}: Omit<Life, 'minutes' | 'course'>): Learner => {
  const random = seededRandom(scatter(seed * 1000 + number));
  for (let i = 0; i < 20; i++) random.share();
  const traits = drawTraits(group, number, random);
  return new Learner(family, traits, TRUTHS[family](traits, random), random);
};

const NONE: ReadonlySet<string> = new Set();

export const stamped = <B extends EventBody>(body: B, number: number): LogEvent => ({
  ...body,
  id: '',
  version: 1,
  at: 0,
  day: dayOfNumber(number),
  device: '',
  student: '',
});

/** The items that are asked for, and the level asked. */
interface Goals {
  readonly items: readonly Item[];
  readonly level: number;
}

const readyShare = ({ truth }: Learner, { items, level }: Goals, day: number): number =>
  items.filter(({ index }) => truth.level(index, day) >= level).length / items.length;

export interface LifeOptions {
  readonly planner: MakePlanner;
  /** Filled with forecasts at the target and of each next run. */
  readonly atTarget?: Calibration;
  readonly nextRun?: Calibration;
}

export function live(life: Life, { planner: make, atTarget, nextRun }: LifeOptions): Outcome {
  const learner = makeLearner(life);
  const calendar = seededRandom(scatter(life.seed * 1000 + life.number + 500_000));
  const course = COURSES[life.course ?? 'usual'];
  const programme = programmeFor(learner.traits, life.minutes, course);
  const planner = make(learner, calendar.share, programme);
  const student = newStudent();
  const items = goalsOf(course);
  const { target } = programme.stages[course.goals[0]!];
  const goals = { items, level: Math.log2(target / 4) };
  applyEvents(student, [stamped({ kind: 'programme', programme }, FIRST_DAY)], NONE);
  let arrived: number | null = null;
  let share = 0;
  let kept = 0;
  let runs = 0;
  let practised = 0;
  const forecasts: PastForecast[] = [];
  const known: Milestone[] = [];
  const run: { -readonly [Key in keyof RunEvent]: RunEvent[Key] } = {
    ...stamped({ kind: 'programme', programme }, FIRST_DAY),
    kind: 'run',
    item: items[0]!.id,
    tempo: target,
    fluency: 0,
    pedal: false,
    judge: 'player',
    entry: null,
  };
  const events = [run];
  const play = ({ items: played, tempo, key }: Task, day: string, number: number): void => {
    run.tempo = tempo;
    run.entry = key;
    const mark = Math.log2(tempo / 4);
    for (const item of played) {
      const expected = nextRun ? chanceEven(student.learner, item, tempo, day) : 0;
      const fluency = learner.play(item.index, mark, number);
      nextRun?.add(expected, fluency >= 3 ? 1 : 0);
      run.item = item.id;
      run.fluency = fluency;
      applyEvents(student, events, NONE);
      planner.noteRun?.(item, fluency, { number, tempo });
      runs += 1;
    }
  };
  const last = nextRun ? FOLLOWED : LONGEST;
  for (let count = 0; count < last; count++) {
    const number = FIRST_DAY + count;
    if (count === course.milestone) {
      share = readyShare(learner, goals, number);
      kept = readyShare(learner, goals, number + AWAY);
    }
    if (atTarget && FORECAST_DAYS.has(count))
      forecast(learner, student, { goals, number, atTarget });
    if (nextRun && count <= LAST_PROPHECY) {
      known.push(milestoneOf(student.learner, programme, dayOfNumber(number)));
      if (PROPHECY_DAYS.has(count)) {
        const before = known[Math.max(FIRST_DAYS, count - WINDOW)]!;
        const said = forecastOf(programme, 'together.4', { now: known[count]!, before });
        if (said.kind === 'expected') forecasts.push({ made: count, ...said });
      }
    }
    if (arrived === null && readyShare(learner, goals, number) >= SHARE_AIMED) arrived = count;
    if (arrived !== null && count >= course.milestone) break;
    if (!isPractised(learner.traits, count, calendar)) continue;
    const day = dayOfNumber(number);
    const seconds = (60 * minutesOn(programme, day)) / course.sittings;
    practised += 1;
    run.day = day;
    for (let sitting = 1; sitting <= course.sittings; sitting++) {
      for (const task of planner.plan({ student, day, number, practised, seconds, sitting })) {
        play(task, day, number);
      }
    }
  }
  const days = arrived !== null && arrived < LONGEST ? arrived : null;
  const held = share > 0 ? Math.min(1, kept / share) : 1;
  return { days, share, kept: held, runs, forecasts, arrived };
}

function forecast(
  learner: Learner,
  student: ReturnType<typeof newStudent>,
  {
    goals,
    number,
    atTarget,
  }: { readonly goals: Goals; readonly number: number; readonly atTarget: Calibration },
): void {
  const day = dayOfNumber(number);
  const { target } = learner.traits;
  for (const item of goals.items) {
    const expected = chanceEven(student.learner, item, target, day);
    const { rated } = learner.chanceEven(item.index, Math.log2(target / 4), number);
    atTarget.add(expected, rated);
  }
}
