/**
 * When a stage will be ready at the present pace: what its slowest tenth has gained lately, carried on. What the
 * interval is worth was measured in the lab (tests/simulation/RESULTS.md).
 */
import { dayNumber, daysBetween } from '../log/day';
import type { Day } from '../log/events';
import { askedStages, type Programme } from '../log/programme';
import { roundItems, type Stage, stageIndex, STAGES } from '../music/deck';
import type { Learner } from '../learning/learner';
import { meanOn } from '../learning/prediction';

/** How far a student was at the start of a day. */
export interface Milestone {
  readonly day: Day;
  /** By stage: the level (log2 of the mark at four notes a beat) that nine items in ten of the programme had. */
  readonly tenths: Float64Array;
}

/** Days over which the pace is taken; with fewer than SHORTEST there is no forecast yet. */
export const WINDOW = 56;
export const SHORTEST = 28;
/** Nothing is said of what lies further ahead, in days. */
const HORIZON = 730;
/** Nine items in ten make a stage ready. */
const SLOWEST_TENTH = 0.1;
/** In octaves of tempo a day; slower is no gain. */
const NO_GAIN = 0.0005;
/**
 * Set by eye on few tuning students. In the lab six to seven forecasts in ten came true between these parts of the
 * expected days, and most of the others later (tests/simulation/RESULTS.md).
 */
const SOONEST = 0.45;
const LATEST = 2.4;

export type Forecast =
  | { readonly kind: 'ready' }
  /** Too few days of practice to tell. */
  | { readonly kind: 'early' }
  /** No gain lately, or none that leads there in two years. */
  | { readonly kind: 'stalled' }
  /** Days from today: expected, and between which about two in three such forecasts come true. */
  | {
      readonly kind: 'expected';
      readonly days: number;
      readonly soonest: number;
      readonly latest: number;
    };

function slowestTenth(learner: Learner, programme: Programme, stage: Stage, day: number): number {
  const levels = Float64Array.from(
    programme.notes.flatMap((note) =>
      roundItems(note, stage).map((item) => meanOn(learner, item, day)),
    ),
  ).toSorted();
  return levels[Math.floor(SLOWEST_TENTH * levels.length)]!;
}

export const milestoneOf = (learner: Learner, programme: Programme, day: Day): Milestone => ({
  day,
  tenths: Float64Array.from(STAGES, (stage) =>
    slowestTenth(learner, programme, stage, dayNumber(day)),
  ),
});

/** Days between two milestones that are kept. */
const APART = 7;

/** Whether a milestone is due on a day. */
export const isMilestone = (milestones: readonly Milestone[], day: Day): boolean =>
  milestones.length === 0 || daysBetween(milestones.at(-1)!.day, day) >= APART;

/** From when on the pace is taken. Not from the first week: there the estimates move because the student gets known. */
export const paceFrom = (milestones: readonly Milestone[], today: Day): Milestone | null =>
  milestones.slice(1).find(({ day }) => daysBetween(day, today) <= WINDOW) ?? null;

/**
 * Forecast of one stage from how far a student is now and was at the start of the window. `pace` multiplies the
 * gain: 1.5 for half as much practice again, as gains are taken to grow with the runs.
 */
export function forecastOf(
  programme: Programme,
  stage: Stage,
  {
    now,
    before,
    pace = 1,
  }: { readonly now: Milestone; readonly before: Milestone; readonly pace?: number },
): Forecast {
  const level = now.tenths[stageIndex(stage)]!;
  const lack = Math.log2(programme.stages[stage].target / 4) - level;
  if (lack <= 0) return { kind: 'ready' };
  const span = daysBetween(before.day, now.day);
  if (span < SHORTEST) return { kind: 'early' };
  const gain = (pace * (level - before.tenths[stageIndex(stage)]!)) / span;
  const days = Math.ceil(lack / gain);
  if (gain < NO_GAIN || days > HORIZON) return { kind: 'stalled' };
  const soonest = Math.floor(SOONEST * days);
  return { kind: 'expected', days, soonest, latest: Math.ceil(LATEST * days) };
}

/** Of several stages the one that takes longest decides. */
const later = (a: Forecast, b: Forecast): Forecast => {
  if (a.kind === 'expected' && b.kind === 'expected') return a.days >= b.days ? a : b;
  const order = ['ready', 'expected', 'stalled', 'early'];
  return order.indexOf(a.kind) >= order.indexOf(b.kind) ? a : b;
};

/** Forecast of all stages that a programme asks for. */
export const programmeForecast = (
  programme: Programme,
  known: { readonly now: Milestone; readonly before: Milestone; readonly pace?: number },
): Forecast =>
  askedStages(programme)
    .map((stage) => forecastOf(programme, stage, known))
    .reduce(later, { kind: 'ready' });

/** Minutes a day that would bring an expected forecast to a date, or null when even three times as many would not. */
export function minutesFor(
  forecast: Forecast & { readonly kind: 'expected' },
  daysLeft: number,
  minutes: number,
): number | null {
  if (daysLeft <= 0) return null;
  const times = forecast.days / daysLeft;
  return times > 3 ? null : Math.ceil(minutes * times);
}
