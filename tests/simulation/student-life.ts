/** One invented student lives through days with one way of planning; what is measured on the way. */
import { dayOfNumber } from '../../shared/log/day';
import type { EventBody, LogEvent, RunEvent } from '../../shared/log/events';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import { roundItems } from '../../shared/music/deck';
import { chanceEven } from '../../shared/learning/prediction';
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
import { Calibration } from './calibration';
import { type MakePlanner, NOTES } from './planners/planner';
import { componentsTruth } from './truths/components';
import { skillTruth } from './truths/skill';
import { tracesTruth } from './truths/traces';

/** 2026-01-05, a Monday. */
export const FIRST_DAY = 20_458;
export const LONGEST = 400;
const SHARE_AIMED = 0.9;
const MILESTONE = 120;
const AWAY = 30;
const FORECAST_DAYS: ReadonlySet<number> = new Set([30, 60, 90, 120]);

const GOALS = NOTES.flatMap((note) => roundItems(note, 'together.4'));

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
}

export interface Outcome {
  /** Days until 90 % of the items are ready in truth; null if not within LONGEST. */
  readonly days: number | null;
  /** Share ready in truth on day 120, and of these what is ready still after 30 days without practice. */
  readonly share: number;
  readonly kept: number;
  readonly runs: number;
  readonly forecasts: readonly PastForecast[];
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
/** Before so many days the estimates move for what is learnt of the student, and not for what he has gained. */
const FIRST_DAYS = 7;

/** Spreads neighbouring seeds over all states of the generator. */
const scatter = (seed: number): number => Math.imul(seed ^ 0x9e37_79b9, 0x85eb_ca6b) ^ (seed << 7);

export const makeLearner = ({ family, group, number, seed }: Omit<Life, 'minutes'>): Learner => {
  const random = seededRandom(scatter(seed * 1000 + number));
  for (let i = 0; i < 20; i++) random.share();
  const traits = drawTraits(group, number, random);
  return new Learner(family, traits, TRUTHS[family](traits, random), random);
};

/** Four octaves together are asked for; the stages below are steps on the way. */
export function programmeFor(traits: Traits, minutes: number): Programme {
  const { stages } = DEFAULT_PROGRAMME;
  const step = { asked: false, target: traits.target };
  return {
    ...DEFAULT_PROGRAMME,
    stages: {
      ...stages,
      'right.2': step,
      'left.2': step,
      'together.2': step,
      'together.4': { asked: true, target: traits.target },
    },
    reached: traits.isHalfWay ? 'together.2' : 'right.2',
    minutes,
  };
}

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

export const readyShare = ({ truth, traits }: Learner, day: number): number => {
  const asked = Math.log2(traits.target / 4);
  let count = 0;
  for (const { index } of GOALS) if (truth.level(index, day) >= asked) count += 1;
  return count / GOALS.length;
};

export interface LifeOptions {
  readonly planner: MakePlanner;
  /** Filled with forecasts at the target and of each next run. */
  readonly atTarget?: Calibration;
  readonly nextRun?: Calibration;
}

export function live(life: Life, { planner: make, atTarget, nextRun }: LifeOptions): Outcome {
  const learner = makeLearner(life);
  const calendar = seededRandom(scatter(life.seed * 1000 + life.number + 500_000));
  const planner = make(learner, calendar.share);
  const student = newStudent();
  const programme = programmeFor(learner.traits, life.minutes);
  applyEvents(student, [stamped({ kind: 'programme', programme }, FIRST_DAY)], NONE);
  let days: number | null = null;
  let share = 0;
  let kept = 0;
  let runs = 0;
  let practised = 0;
  const forecasts: PastForecast[] = [];
  const known: Milestone[] = [];
  const run: { -readonly [Key in keyof RunEvent]: RunEvent[Key] } = {
    ...stamped({ kind: 'programme', programme }, FIRST_DAY),
    kind: 'run',
    item: GOALS[0]!.id,
    tempo: programme.stages['together.4'].target,
    fluency: 0,
    pedal: false,
    judge: 'player',
    entry: null,
  };
  const events = [run];
  for (let count = 0; count < LONGEST; count++) {
    const number = FIRST_DAY + count;
    if (count === MILESTONE) {
      share = readyShare(learner, number);
      kept = readyShare(learner, number + AWAY);
    }
    if (atTarget && FORECAST_DAYS.has(count)) forecast(learner, student, number, atTarget);
    if (nextRun) {
      known.push(milestoneOf(student.learner, programme, dayOfNumber(number)));
      if (PROPHECY_DAYS.has(count)) {
        const before = known[Math.max(FIRST_DAYS, count - WINDOW)]!;
        const said = forecastOf(programme, 'together.4', { now: known[count]!, before });
        if (said.kind === 'expected') forecasts.push({ made: count, ...said });
      }
    }
    if (days === null && readyShare(learner, number) >= SHARE_AIMED) days = count;
    if (days !== null && count >= MILESTONE) break;
    if (!isPractised(learner.traits, count, calendar)) continue;
    const day = dayOfNumber(number);
    const tasks = planner.plan({ student, day, number, practised, seconds: life.minutes * 60 });
    practised += 1;
    run.day = day;
    for (const { items, tempo, key } of tasks) {
      run.tempo = tempo;
      run.entry = key;
      const mark = Math.log2(tempo / 4);
      for (const item of items) {
        const expected = nextRun ? chanceEven(student.learner, item, tempo, day) : 0;
        const fluency = learner.play(item.index, mark, number);
        nextRun?.add(expected, fluency >= 3 ? 1 : 0);
        run.item = item.id;
        run.fluency = fluency;
        applyEvents(student, events, NONE);
        planner.noteRun?.(item, fluency, number);
        runs += 1;
      }
    }
  }
  return { days, share, kept: share > 0 ? Math.min(1, kept / share) : 1, runs, forecasts };
}

function forecast(
  learner: Learner,
  student: ReturnType<typeof newStudent>,
  number: number,
  atTarget: Calibration,
): void {
  const day = dayOfNumber(number);
  const { target } = learner.traits;
  for (const item of GOALS) {
    const expected = chanceEven(student.learner, item, target, day);
    const { rated } = learner.chanceEven(item.index, Math.log2(target / 4), number);
    atTarget.add(expected, rated);
  }
}
