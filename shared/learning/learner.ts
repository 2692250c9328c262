/**
 * What is known of a player: the state of an ordinal probit on the logarithm of tempo. What a player can do on an item
 * is the sum of a general ability, an effect of the way of playing (hands and motion) and a residual of the item's own,
 * less what days without practice take. Each rated run updates all three by moment matching (observe.ts).
 *
 * How kindly the player rates is one more effect, which only the player's own ratings have. They alone cannot tell it
 * from ability: so until someone or something else has judged a run, it is taken for none and levels are by the
 * player's own standard. From the first such word on (an anchor) they are by the teacher's.
 *
 * Unit: log2 of the metronome mark at four notes a beat, so 1 is a doubling of tempo. The numbers come from a
 * simulation with invented learners; they say which rules are robust, not how fast people learn.
 */
import { ARPEGGIO_COUNT, DECK, type Item, WAYS } from '../music/deck';
import type { Tempo } from '../music/tempo';

/** Where the effects lie: general ability first, then each of the seven ways, and last how kindly the player rates. */
export const KINDNESS = 1 + WAYS.length;
export const EFFECTS = KINDNESS + 1;
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
  /** What runs of other items were worth to an item, in runs of its own. */
  readonly service: Float64Array;
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

/** Spread of how one run of a new student comes out, in octaves of tempo. */
const START_NOISE = 0.33;
const NOTES_A_BEAT = 4;
/** Where one fluency ends and the next begins, in octaves of tempo below or above the reach, for a new student. */
export const START_CUTS = [-Infinity, -0.8, -0.4, 0, 0.45, Infinity] as const;
/** Spread of what is not known of a new student, in octaves: of the ability, of each way, and of each item beside these. */
const ABILITY_SPREAD = 0.35;
const WAY_SPREAD = 0.2;
const ITEM_SPREAD = 0.18;
const START_ABILITY = Math.log2(45);
/** By way: right 2, left 2, together 2, together 4, contrary; then right 4 and left 4, set between their neighbours. */
const START_EFFECTS = [0, -0.1, -0.4, -0.55, -0.7, -0.15, -0.25] as const;

export function newLearner(): Learner {
  const covariance = new Float64Array(EFFECTS * EFFECTS);
  for (let i = 0; i < KINDNESS; i++)
    covariance[i * EFFECTS + i] = (i === 0 ? ABILITY_SPREAD : WAY_SPREAD) ** 2;
  return {
    effects: Float64Array.of(START_ABILITY, ...START_EFFECTS, 0),
    covariance,
    residual: new Float64Array(DECK_SIZE),
    variance: new Float64Array(DECK_SIZE).fill(ITEM_SPREAD ** 2),
    runs: new Float64Array(DECK_SIZE),
    service: new Float64Array(DECK_SIZE),
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
  service: learner.service.slice(),
  stability: learner.stability.slice(),
  lastDay: learner.lastDay.slice(),
  runsThatDay: learner.runsThatDay.slice(),
  clock: learner.clock.slice(),
  noise: learner.noise.slice(),
  cuts: learner.cuts.slice(),
  foretold: learner.foretold.slice(),
});

/** The level that a tempo asks for, and back. */
export const levelOf = (tempo: Tempo): number => Math.log2(tempo / NOTES_A_BEAT);
export const tempoAt = (level: number): Tempo => NOTES_A_BEAT * 2 ** level;
/** Items lie in the deck way by way. */
export const wayRow = (item: Item): number => 1 + Math.floor(item.index / ARPEGGIO_COUNT);

/** Spread of how kindly people rate, in octaves of tempo (assumed). */
const KINDNESS_SPREAD = 0.15;

/** Whether anyone but the player has judged a run. */
export const isAnchored = ({ covariance }: Learner): boolean =>
  covariance[EFFECTS * EFFECTS - 1]! > 0;

/**
 * What was learnt from the player's own ratings is ability and kindness together; how much of it is which is open.
 * Changes the learner.
 */
export function anchor({ covariance }: Learner): void {
  const open = KINDNESS_SPREAD ** 2;
  covariance[0]! += open;
  covariance[KINDNESS]! -= open;
  covariance[KINDNESS * EFFECTS]! -= open;
  covariance[KINDNESS * EFFECTS + KINDNESS]! += open;
}
