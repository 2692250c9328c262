/**
 * The model of the player: an ordinal probit on the logarithm of tempo. What a player can do on an item is the sum of
 * a general ability, an effect of the way of playing (hands and motion) and a residual of the item's own, less what
 * days without practice take. Each rated run updates all three by moment matching.
 *
 * Unit: log2 of the metronome mark at four notes a beat, so 1 is a doubling of tempo. The numbers come from a
 * simulation with invented learners; they say which rules are robust, not how fast people learn.
 */
import { dayNumber } from '../log/day';
import { type Day, EVEN, type Fluency } from '../log/events';
import { ARPEGGIO_COUNT, DECK, type Item, type Way, WAYS } from '../music/deck';
import type { Tempo } from '../music/tempo';
import { cumulative, density } from './normal';

/** General ability, then one effect for each of the seven ways. */
const EFFECTS = 1 + WAYS.length;
const DECK_SIZE = DECK.length;

/** Typed arrays only, so that a copy is cheap and IndexedDB keeps it as it is. */
export interface Learner {
  readonly effects: Float64Array;
  /** EFFECTS x EFFECTS, row by row. */
  readonly covariance: Float64Array;
  readonly residual: Float64Array;
  readonly variance: Float64Array;
  /** Effective number of runs: later runs of the same day count for less. */
  readonly runs: Float64Array;
  /** Days in which about a tenth of an octave of tempo fades. */
  readonly stability: Float64Array;
  /** Day number of an item's last run; 0 is never. */
  readonly lastDay: Int32Array;
  readonly runsThatDay: Int32Array;
  /** One element: the day number of the last run of all; 0 is never. */
  readonly clock: Int32Array;
  /** Logarithm of the spread of this student's runs, and how many runs it comes from. */
  readonly noise: Float64Array;
  /**
   * Where this student's levels of fluency begin, as START_CUTS. That of "even" stays at 0: it is what reach means, and
   * ratings alone cannot tell whether a student says it too soon.
   */
  readonly cuts: Float64Array;
  /**
   * Of each run's chance of "even", told before it was rated: by tenths the sum of chances, the runs that came out even
   * and all runs; then the sum of squares between chance and outcome.
   */
  readonly foretold: Float64Array;
}

/** Bins of equal width in which forecasts are held against what happened. */
export const TENTHS = 10;

export interface Reach {
  /** Notes per minute at which the item is expected to be at least even as often as not. */
  readonly tempo: Tempo;
  /** One standard deviation below and above. */
  readonly low: Tempo;
  readonly high: Tempo;
}

/** Spread of how one run of a new student comes out, in octaves of tempo. */
const START_NOISE = 0.33;
/** A student's own spread is learnt: as if so many runs had shown the one above, and between these limits. */
const NOISE_RUNS = 100;
const LOG_NOISE_LIMITS = [-2, -0.5] as const;
/** What one rating tells of the logarithm of the spread, in units of its own variance. */
const NOISE_TOLD = 0.8;
/** Share of runs that say nothing of what the player can do: a slip, a doorbell. They are even as often as not. */
const STRAY = 0.04;
/** Chance of each level of fluency in a stray run. */
const STRAY_LEVELS = [1 / 6, 1 / 6, 1 / 6, 1 / 4, 1 / 4] as const;
/** No rating is taken for stray altogether, or a wrong estimate could never be put right. */
const LEAST_TRUST = 0.25;
/** Where a run is at least even seven times in ten, strays included: the normal's 70.8 % point. */
const SEVEN_IN_TEN = 0.5485;
/** Expected sharpening by a rating at about the reach: five levels tell less than the exact tempo would. */
const TOLD = 0.85;
const NOTES_A_BEAT = 4;
/** Where one fluency ends and the next begins, in octaves of tempo below or above the reach, for a new student. */
const START_CUTS = [-Infinity, -0.8, -0.4, 0, 0.45, Infinity] as const;
/** A student's own cuts are learnt, as if so many runs had shown those above, and between these limits. */
const CUT_RUNS = 60;
const LOWEST_CUTS = [-Infinity, -1.2, -0.7, 0, 0.2, Infinity] as const;
const HIGHEST_CUTS = [-Infinity, -0.75, -0.2, 0, 0.9, Infinity] as const;
/** What one rating tells of the cuts beside it, in units of its own precision. */
const CUT_TOLD = 0.5;
const START_ABILITY = Math.log2(45);
/** By way: right 2, left 2, together 2, together 4, contrary; then right 4 and left 4, set between their neighbours. */
const START_EFFECTS = [0, -0.1, -0.4, -0.55, -0.7, -0.15, -0.25] as const;
const ABILITY_DRIFT = 0.016 ** 2;
const ITEM_DRIFT = 0.015 ** 2;
const ITEM_VARIANCE_LIMIT = 0.35 ** 2;
const LONGEST_STABILITY = 300;

export function newLearner(): Learner {
  const covariance = new Float64Array(EFFECTS * EFFECTS);
  for (let i = 0; i < EFFECTS; i++) covariance[i * EFFECTS + i] = (i === 0 ? 0.35 : 0.2) ** 2;
  return {
    effects: Float64Array.of(START_ABILITY, ...START_EFFECTS),
    covariance,
    residual: new Float64Array(DECK_SIZE),
    variance: new Float64Array(DECK_SIZE).fill(0.25 ** 2),
    runs: new Float64Array(DECK_SIZE),
    stability: new Float64Array(DECK_SIZE).fill(3),
    lastDay: new Int32Array(DECK_SIZE),
    runsThatDay: new Int32Array(DECK_SIZE),
    clock: new Int32Array(1),
    noise: Float64Array.of(Math.log(START_NOISE), 0),
    cuts: Float64Array.from(START_CUTS),
    foretold: new Float64Array(3 * TENTHS + 1),
  };
}

export const cloneLearner = (learner: Learner): Learner => ({
  effects: learner.effects.slice(),
  covariance: learner.covariance.slice(),
  residual: learner.residual.slice(),
  variance: learner.variance.slice(),
  runs: learner.runs.slice(),
  stability: learner.stability.slice(),
  lastDay: learner.lastDay.slice(),
  runsThatDay: learner.runsThatDay.slice(),
  clock: learner.clock.slice(),
  noise: learner.noise.slice(),
  cuts: learner.cuts.slice(),
  foretold: learner.foretold.slice(),
});

const levelOf = (tempo: Tempo): number => Math.log2(tempo / NOTES_A_BEAT);
const tempoAt = (level: number): Tempo => NOTES_A_BEAT * 2 ** level;
/** Items lie in the deck way by way. */
const wayRow = (item: Item): number => 1 + Math.floor(item.index / ARPEGGIO_COUNT);

/** What a pause takes, in octaves of tempo: a power law. */
const lossAfter = (days: number, stability: number): number =>
  0.1 * Math.log2(1 + days / stability);

/** Calendar days since the item's last run; 0 for one that was never played, as it has nothing to lose. */
function pauseOf(learner: Learner, item: Item, day: number): number {
  const last = learner.lastDay[item.index]!;
  return last === 0 ? 0 : Math.max(0, day - last);
}

/** The part of an item's level that it shares: general ability and the way of playing. */
const sharedLevel = (learner: Learner, item: Item): number =>
  learner.effects[0]! + learner.effects[wayRow(item)]!;

/** Expected level of an item on a day given by number, without anything played until then. */
export function meanOn(learner: Learner, item: Item, day: number): number {
  const loss = lossAfter(pauseOf(learner, item, day), learner.stability[item.index]!);
  return sharedLevel(learner, item) + learner.residual[item.index]! - loss;
}

/**
 * What a run today changes is judged on a later date, by these two levels. Without the run, an item that was never
 * played is taken to fade from today on like one that was: what is known of it is a guess that stands for today.
 */
export function meanWithoutRun(learner: Learner, item: Item, today: number, date: number): number {
  const pause = pauseOf(learner, item, today) + date - today;
  const { residual, stability } = learner;
  return (
    sharedLevel(learner, item) + residual[item.index]! - lossAfter(pause, stability[item.index]!)
  );
}

export function meanAfterRun(learner: Learner, item: Item, today: number, date: number): number {
  const { residual, stability } = practised(learner, item, today, false);
  return sharedLevel(learner, item) + residual - lossAfter(date - today, stability);
}

function itemVarianceOn(learner: Learner, item: Item, day: number): number {
  const grown = learner.variance[item.index]! + ITEM_DRIFT * pauseOf(learner, item, day);
  return Math.min(ITEM_VARIANCE_LIMIT, grown);
}

/** What the days since the last run of all add to the variance of each effect. */
function abilityDrift(learner: Learner, day: number): number {
  const last = learner.clock[0]!;
  return last === 0 ? 0 : ABILITY_DRIFT * Math.min(3, Math.max(0, day - last));
}

const runVariance = (learner: Learner): number => Math.exp(2 * learner.noise[0]!);

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

/** The tempo at which a run is at least even about seven times in ten. */
export function workingTempo(learner: Learner, item: Item, day: Day): Tempo {
  const number = dayNumber(day);
  const spread = Math.sqrt(varianceOn(learner, item, number) + runVariance(learner));
  return tempoAt(meanOn(learner, item, number) - SEVEN_IN_TEN * spread);
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

/** What practice does to an item, whatever the rating: it regains half of the loss and gains a little. */
interface Practised {
  readonly residual: number;
  readonly runs: number;
  readonly stability: number;
}

/** The item after one more run on a day, as far as that does not depend on how the run went. */
function practised(learner: Learner, item: Item, day: number, brokeDown: boolean): Practised {
  const i = item.index;
  const pause = pauseOf(learner, item, day);
  const stability = learner.stability[i]!;
  const isNewDay = learner.lastDay[i]! < day;
  const before = isNewDay ? 0 : learner.runsThatDay[i]!;
  const share = 1 / (1 + 0.7 * before);
  const runs = learner.runs[i]!;
  return {
    residual: learner.residual[i]! - 0.5 * lossAfter(pause, stability) + (0.4 / (runs + 4)) * share,
    runs: runs + share,
    stability:
      isNewDay && !brokeDown
        ? Math.min(LONGEST_STABILITY, stability * (1 + 0.8 * Math.min(1, pause / stability)))
        : stability,
  };
}

/** Counts a run in, as to practice only (used on its own when a day is planned ahead). Changes the learner. */
export function practise(learner: Learner, item: Item, day: number, brokeDown = false): void {
  const i = item.index;
  const next = practised(learner, item, day, brokeDown);
  learner.runsThatDay[i] = learner.lastDay[i]! < day ? 1 : learner.runsThatDay[i]! + 1;
  learner.residual[i] = next.residual;
  learner.runs[i] = next.runs;
  learner.stability[i] = next.stability;
  learner.lastDay[i] = Math.max(learner.lastDay[i]!, day);
}

/**
 * What a rating says: how far it moves the estimate, by how much it sharpens it, whether runs spread less, and where the
 * cuts below and above it should be.
 */
interface Told {
  shift: number;
  sharpening: number;
  narrowing: number;
  lowerCut: number;
  upperCut: number;
}

/** Written by each rating anew, as a replay has a hundred thousand of them. */
const told: Told = { shift: 0, sharpening: 0, narrowing: 0, lowerCut: 0, upperCut: 0 };

/**
 * Moments of the normal between two cuts, mixed with stray runs: the more a rating surprises, the likelier it is that
 * it says nothing.
 */
function listen({ cuts }: Learner, fluency: Fluency, distance: number, spread: number): void {
  const lower = (cuts[fluency]! - distance) / spread;
  const upper = (cuts[fluency + 1]! - distance) / spread;
  const mass = cumulative(upper) - cumulative(lower);
  if (mass < 1e-12) {
    told.shift = LEAST_TRUST * (lower > 0 ? 4 : -4);
    told.sharpening = told.narrowing = told.lowerCut = told.upperCut = 0;
    return;
  }
  const atLower = density(lower);
  const atUpper = density(upper);
  const shift = (atLower - atUpper) / mass;
  const curve =
    ((Number.isFinite(upper) ? upper * atUpper : 0) -
      (Number.isFinite(lower) ? lower * atLower : 0)) /
    mass;
  const meant = (1 - STRAY) * mass;
  const trust = Math.max(LEAST_TRUST, meant / (meant + STRAY * STRAY_LEVELS[fluency]));
  const sharpening = trust * (shift * shift + curve) - trust * (1 - trust) * shift * shift;
  told.shift = trust * Math.min(4, Math.max(-4, shift));
  told.sharpening = Math.min(0.98, Math.max(0, sharpening));
  told.narrowing = trust * Math.min(2, Math.max(-2, curve));
  told.lowerCut = -trust * Math.min(3, atLower / mass);
  told.upperCut = trust * Math.min(3, atUpper / mass);
}

/**
 * Moves what is known of the student's ratings by steps of maximum likelihood: how much runs spread, and where each
 * level of fluency begins. `share` is the part of the spread that the run itself has.
 */
function learnRating(learner: Learner, fluency: Fluency, spread: number, share: number): void {
  const { noise, cuts } = learner;
  const runs = noise[1]!;
  const [narrowest, widest] = LOG_NOISE_LIMITS;
  const narrower = (told.narrowing * share) / (NOISE_TOLD * (NOISE_RUNS + runs));
  noise[0] = Math.min(widest, Math.max(narrowest, noise[0]! - narrower));
  noise[1] = runs + 1;
  const step = spread / (CUT_TOLD * (CUT_RUNS + runs));
  moveCut(cuts, fluency, step * told.lowerCut);
  moveCut(cuts, fluency + 1, step * told.upperCut);
}

function moveCut(cuts: Float64Array, cut: number, by: number): void {
  cuts[cut] = Math.min(HIGHEST_CUTS[cut]!, Math.max(LOWEST_CUTS[cut]!, cuts[cut]! + by));
}

/** Keeps the chance that a run was given before it was rated beside what it became. */
function noteForetold({ foretold }: Learner, chance: number, isEven: boolean): void {
  const tenth = Math.min(TENTHS - 1, Math.floor(TENTHS * chance));
  foretold[tenth]! += chance;
  if (isEven) foretold[TENTHS + tenth]! += 1;
  foretold[2 * TENTHS + tenth]! += 1;
  foretold[3 * TENTHS]! += (chance - (isEven ? 1 : 0)) ** 2;
}

const gains = new Float64Array(EFFECTS);

/** Takes one rated run in. Changes the learner. */
export function observe(
  learner: Learner,
  item: Item,
  run: { readonly tempo: Tempo; readonly fluency: Fluency; readonly day: number },
): void {
  const { effects, covariance, residual, variance } = learner;
  const { day, fluency } = run;
  const drift = abilityDrift(learner, day);
  if (drift > 0) for (let i = 0; i < EFFECTS; i++) covariance[i * (EFFECTS + 1)]! += drift;
  learner.clock[0] = Math.max(learner.clock[0]!, day);

  const row = wayRow(item);
  const itemVariance = itemVarianceOn(learner, item, day);
  for (let i = 0; i < EFFECTS; i++) {
    gains[i] = covariance[i * EFFECTS]! + covariance[i * EFFECTS + row]!;
  }
  const ownNoise = runVariance(learner);
  const spread = Math.sqrt(gains[0]! + gains[row]! + itemVariance + ownNoise);
  const distance = meanOn(learner, item, day) - levelOf(run.tempo);
  noteForetold(learner, chanceAt(distance, spread * spread), fluency >= EVEN);
  listen(learner, fluency, distance, spread);
  const move = told.shift / spread;
  const shrink = told.sharpening / (spread * spread);
  learnRating(learner, fluency, spread, ownNoise / (spread * spread));
  for (let i = 0; i < EFFECTS; i++) {
    effects[i]! += gains[i]! * move;
    for (let j = 0; j < EFFECTS; j++) {
      covariance[i * EFFECTS + j]! -= gains[i]! * gains[j]! * shrink;
    }
  }
  residual[item.index]! += itemVariance * move;
  variance[item.index] = itemVariance - itemVariance * itemVariance * shrink + 0.025 ** 2;
  practise(learner, item, day, fluency === 0);
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
