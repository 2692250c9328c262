/**
 * When a stage will be ready at the present pace: what its slowest tenth has gained in the last twelve weeks, carried on
 * more slowly. What the interval is worth was measured in the lab (tests/simulation/RESULTS.md).
 */
import { dayNumber, daysBetween } from '../log/day';
import type { Day } from '../log/events';
import { askedStages, type Programme, targetFor, targetOfMost } from '../log/programme';
import { roundItems, type Stage, stageIndex, STAGES } from '../music/deck';
import { KINDNESS, type Learner } from '../learning/learner';
import { itemVarianceOn, meanOn } from '../learning/prediction';
import { itemsAsked } from '../learning/readiness';

/** How far a student was at the start of a day. */
export interface Milestone {
  readonly day: Day;
  /**
   * By stage: the level (log2 of the mark at four notes a beat) that nine items in ten of the programme had; of chords
   * with a target of their own, as far from it as from that of the others.
   */
  readonly tenths: Float64Array;
  /** How kindly the player was known to rate. */
  readonly kindness: number;
}

/** Days over which the pace is taken; with fewer than SHORTEST there is no forecast yet. */
export const WINDOW = 84;
export const SHORTEST = 28;
/** Nothing is said of what lies further ahead, in days. */
const HORIZON = 365;
/** Nine items in ten make a stage ready. */
const SLOWEST_TENTH = 0.1;
/** The slowest tenth of a normal distribution lies so many standard deviations below its mean. */
const TENTH_BELOW = 1.2816;
/** In octaves of tempo a day; slower is no gain. */
const NO_GAIN = 0.0005;
/** A pace seldom lasts: so much of it is counted on, and for the rest a slow one, in octaves of tempo a day. */
const LASTING = 0.7;
const SLOW_GAIN = 0.002;
/**
 * Parts of the expected days, and days more: so that on the lab's tuning students eight forecasts in ten came true in
 * between.
 */
const SOONEST = 0.42;
const LATEST = 2.8;
const DAYS_MORE = 3;

export type Forecast =
  | { readonly kind: 'ready' }
  /** Too few days of practice to tell. */
  | { readonly kind: 'early' }
  /** No gain lately, or none that leads there within a year. */
  | { readonly kind: 'stalled' }
  /** Days from today: expected, and between which about eight in ten such forecasts come true. */
  | {
      readonly kind: 'expected';
      readonly days: number;
      readonly soonest: number;
      readonly latest: number;
    };

/**
 * The level that nine items in ten have. The slowest tenth of the estimates lies too high, as each item is above or below
 * its own: so it is moved down as far as a normal distribution widens by that.
 */
function slowestTenth(learner: Learner, programme: Programme, stage: Stage, day: number): number {
  // Of a stage that is only a step on the way all count.
  const items = programme.stages[stage].asked
    ? itemsAsked(programme, stage)
    : programme.notes.flatMap((note) => roundItems(note, stage));
  const most = targetOfMost(programme, stage);
  const levels = Float64Array.from(items, (item) => {
    const target = targetFor(programme, item);
    const level = meanOn(learner, item, day);
    // What is asked for at half the tempo needs an octave less.
    return target === most ? level : level + Math.log2(most / target);
  }).toSorted();
  const middle = levels.reduce((sum, level) => sum + level, 0) / levels.length;
  const unknown =
    items.reduce((sum, item) => sum + itemVarianceOn(learner, item, day), 0) / items.length;
  const below = middle - levels[Math.floor(SLOWEST_TENTH * levels.length)]!;
  return middle - Math.hypot(below, TENTH_BELOW * Math.sqrt(unknown));
}

export const milestoneOf = (learner: Learner, programme: Programme, day: Day): Milestone => ({
  day,
  tenths: Float64Array.from(STAGES, (stage) =>
    slowestTenth(learner, programme, stage, dayNumber(day)),
  ),
  kindness: learner.effects[KINDNESS]!,
});

/** Days between two milestones that are kept. */
const APART = 7;

/** Whether a milestone is due on a day. */
export const isMilestone = (milestones: readonly Milestone[], day: Day): boolean =>
  milestones.length === 0 || daysBetween(milestones.at(-1)!.day, day) >= APART;

/** From when on the pace is taken. Not from the first week: there the estimates move because the student gets known. */
export const paceFrom = (milestones: readonly Milestone[], today: Day): Milestone | null =>
  milestones.slice(1).find(({ day }) => daysBetween(day, today) <= WINDOW) ?? null;

/** Where a student is today, and was when the window began: today too, while there is no such day. */
export interface PaceWindow {
  readonly now: Milestone;
  readonly before: Milestone;
}

export function paceWindowOf(
  { learner, milestones }: { readonly learner: Learner; readonly milestones: readonly Milestone[] },
  programme: Programme,
  today: Day,
): PaceWindow {
  const now = milestoneOf(learner, programme, today);
  return { now, before: paceFrom(milestones, today) ?? now };
}

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
  const lack = Math.log2(targetOfMost(programme, stage) / 4) - level;
  if (lack <= 0) return { kind: 'ready' };
  const span = daysBetween(before.day, now.day);
  if (span < SHORTEST) return { kind: 'early' };
  // A first mark shows how kind the ratings were: what that takes from the level is no loss of pace.
  const learnt = now.kindness - before.kindness;
  const own = (level - before.tenths[stageIndex(stage)]! + learnt) / span;
  const gain = pace * (LASTING * own + (1 - LASTING) * SLOW_GAIN);
  const days = Math.ceil(lack / gain);
  if (own < NO_GAIN || days > HORIZON) return { kind: 'stalled' };
  const soonest = Math.max(0, Math.floor(SOONEST * days) - DAYS_MORE);
  return { kind: 'expected', days, soonest, latest: Math.ceil(LATEST * days) + DAYS_MORE };
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
