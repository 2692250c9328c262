/** What is expected of an item on a day: its level, how sure that is, and how likely a run is to come out even. */
import { dayNumber } from '../log/day';
import type { Day } from '../log/events';
import { type Item, type Way, WAYS } from '../music/deck';
import type { Tempo } from '../music/tempo';
import { EFFECTS, type Learner, levelOf, tempoAt, wayRow } from './learner';
import { cumulative } from './normal';
import { lossAfter, pauseOf, practised } from './practice';

export interface Reach {
  /** Notes per minute at which the item is expected to be at least even as often as not. */
  readonly tempo: Tempo;
  /** One standard deviation below and above. */
  readonly low: Tempo;
  readonly high: Tempo;
}

/** Share of runs that say nothing of what the player can do: a slip, a doorbell. They are even as often as not. */
export const STRAY = 0.02;
/** Where a run is at least even eight times in ten, strays included: the normal's 80.6 % point. */
const EIGHT_IN_TEN = 0.8637;
/** Expected sharpening by a rating at about the reach: five levels tell less than the exact tempo would. */
const TOLD = 0.85;
const ABILITY_DRIFT = 0.016 ** 2;
const ITEM_DRIFT = 0.01 ** 2;
const ITEM_VARIANCE_LIMIT = 0.35 ** 2;

/** The part of an item's level that it shares: general ability and the way of playing. */
const sharedLevel = (learner: Learner, item: Item): number =>
  learner.effects[0]! + learner.effects[wayRow(item)]!;

/** Expected level of an item, without what pauses take. */
export const heldLevel = (learner: Learner, item: Item): number =>
  sharedLevel(learner, item) + learner.residual[item.index]!;

/** Expected level of an item on a day given by number, without anything played until then. */
export function meanOn(learner: Learner, item: Item, day: number): number {
  const loss = lossAfter(pauseOf(learner, item, day), learner.stability[item.index]!);
  return heldLevel(learner, item) - loss;
}

/**
 * What a run today changes is judged on a later date, by these two levels. Without the run, an item that was never
 * played is taken to fade from today on like one that was: what is known of it is a guess that stands for today.
 */
export function meanWithoutRun(learner: Learner, item: Item, today: number, date: number): number {
  const pause = pauseOf(learner, item, today) + date - today;
  return heldLevel(learner, item) - lossAfter(pause, learner.stability[item.index]!);
}

export function meanAfterRun(learner: Learner, item: Item, today: number, date: number): number {
  const { residual, stability } = practised(learner, item, today, false);
  return sharedLevel(learner, item) + residual - lossAfter(date - today, stability);
}

export function itemVarianceOn(learner: Learner, item: Item, day: number): number {
  const grown = learner.variance[item.index]! + ITEM_DRIFT * pauseOf(learner, item, day);
  // A mark takes away of what the pause before it has added: on a day within that pause too much.
  return Math.min(ITEM_VARIANCE_LIMIT, Math.max(0, grown));
}

/** What the days since the last run of all add to the variance of each effect. */
export function abilityDrift(learner: Learner, day: number): number {
  const last = learner.clock[0]!;
  return last === 0 ? 0 : ABILITY_DRIFT * Math.min(3, Math.max(0, day - last));
}

export const runVariance = (learner: Learner): number => Math.exp(2 * learner.noise[0]!);

function varianceOn(learner: Learner, item: Item, day: number): number {
  const { covariance } = learner;
  const row = wayRow(item);
  const shared = covariance[0]! + 2 * covariance[row]! + covariance[row * EFFECTS + row]!;
  return shared + 2 * abilityDrift(learner, day) + itemVarianceOn(learner, item, day);
}

/** The tempo of an item on a day, with its spread. */
export function reachOf(learner: Learner, item: Item, day: Day): Reach {
  const number = dayNumber(day);
  const mean = meanOn(learner, item, number);
  const spread = Math.sqrt(varianceOn(learner, item, number));
  return { tempo: tempoAt(mean), low: tempoAt(mean - spread), high: tempoAt(mean + spread) };
}

/** Probability that a run at this tempo (notes per minute) on this day is at least even. */
export function chanceEven(learner: Learner, item: Item, tempo: Tempo, day: Day): number {
  const number = dayNumber(day);
  const spread = Math.sqrt(varianceOn(learner, item, number) + runVariance(learner));
  const above = (meanOn(learner, item, number) - levelOf(tempo)) / spread;
  return STRAY / 2 + (1 - STRAY) * cumulative(above);
}

/** The tempo at which a run is at least even about eight times in ten. */
export function workingTempo(learner: Learner, item: Item, day: Day): Tempo {
  const number = dayNumber(day);
  const spread = Math.sqrt(varianceOn(learner, item, number) + runVariance(learner));
  return tempoAt(meanOn(learner, item, number) - EIGHT_IN_TEN * spread);
}

/**
 * How much one run of an item at about its reach is expected to lower the variances of the reaches of a deck, summed.
 * Unit: square octaves of tempo.
 */
export function informationOf(
  learner: Learner,
  item: Item,
  deck: readonly Item[],
  day: number,
): number {
  const { covariance } = learner;
  const row = wayRow(item);
  const shared = (effect: number): number =>
    covariance[effect * EFFECTS]! + covariance[effect * EFFECTS + row]!;
  const own = itemVarianceOn(learner, item, day);
  const withItem = (other: Item): number =>
    shared(0) + shared(wayRow(other)) + (other === item ? own : 0);
  const squares = deck.reduce((sum, other) => sum + withItem(other) ** 2, 0);
  return (TOLD * squares) / (varianceOn(learner, item, day) + runVariance(learner));
}

/** Probability that a run which is expected so many octaves above its tempo is at least even. */
export const chanceAt = (margin: number, variance: number): number =>
  STRAY / 2 + (1 - STRAY) * cumulative(margin / Math.sqrt(variance));

/** How far an item lies above a tempo on a day, in octaves, and the variance of one run of it that no other item shares. */
export function marginOf(
  learner: Learner,
  item: Item,
  tempo: Tempo,
  day: Day,
): { readonly margin: number; readonly variance: number } {
  const number = dayNumber(day);
  return {
    margin: meanOn(learner, item, number) - levelOf(tempo),
    variance: itemVarianceOn(learner, item, number) + runVariance(learner),
  };
}

/** Covariance on a day of what the items of one way and those of another have in common, in square octaves. */
export function sharedCovariance(learner: Learner, one: Way, other: Way, day: Day): number {
  const { covariance } = learner;
  const [a, b] = [1 + WAYS.indexOf(one), 1 + WAYS.indexOf(other)];
  const known = covariance[0]! + covariance[a]! + covariance[b]! + covariance[a * EFFECTS + b]!;
  const drift = abilityDrift(learner, dayNumber(day));
  return known + (one === other ? 2 : 1) * drift;
}
