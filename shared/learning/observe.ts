/** Takes rated runs in: moment matching for an ordinal probit. */
import { EVEN, type Fluency, type Judge } from '../log/events';
import type { Heard } from '../log/heard';
import type { Item } from '../music/deck';
import type { Tempo } from '../music/tempo';
import {
  anchor,
  EFFECTS,
  isAnchored,
  KINDNESS,
  type Learner,
  levelOf,
  START_CUTS,
  TENTHS,
  wayRow,
} from './learner';
import { abilityDrift, chanceAt, itemVarianceOn, meanOn, runVariance } from './prediction';
import { practise } from './practice';
import { learnRating, listen, told } from './rating';

/** What each run adds to the variance of its item: practice changes it in ways that are not told. */
const RUN_DRIFT = 0.01 ** 2;
/**
 * What a take that is sure of itself counts for, of one run: the rest is the player's own rating, which may know what no
 * key tells (own choice, as the limits by which a take calls a run even are proposals).
 */
const TAKE_TRUST = 0.7;

/** Keeps the chance that a run was given before it was rated beside what it became. */
function noteForetold({ foretold }: Learner, chance: number, isEven: boolean): void {
  const tenth = Math.min(TENTHS - 1, Math.floor(TENTHS * chance));
  foretold[tenth]! += chance;
  if (isEven) foretold[TENTHS + tenth]! += 1;
  foretold[2 * TENTHS + tenth]! += 1;
  foretold[3 * TENTHS]! += (chance - (isEven ? 1 : 0)) ** 2;
}

const gains = new Float64Array(EFFECTS);

/** What someone says of a run. */
interface Word {
  readonly tempo: Tempo;
  readonly fluency: Fluency;
  /** Whether it is the player's own; otherwise it is an anchor. */
  readonly isOwn: boolean;
  /** 0 to 1. */
  readonly weight: number;
}

/**
 * Lets a word on a day move what is known, as to the level only. Changes the learner, and gives the chance of "even"
 * that the word had before it fell.
 */
function hear(learner: Learner, item: Item, day: number, word: Word): number {
  const { effects, covariance, residual, variance } = learner;
  if (!word.isOwn && !isAnchored(learner)) anchor(learner);
  // Without an anchor the last effect is nothing, and costs nothing.
  const size = isAnchored(learner) ? EFFECTS : KINDNESS;
  const isKind = word.isOwn && size === EFFECTS;
  const row = wayRow(item);
  for (let i = 0; i < size; i++) {
    gains[i] = covariance[i * EFFECTS]! + covariance[i * EFFECTS + row]!;
    if (isKind) gains[i]! += covariance[i * EFFECTS + KINDNESS]!;
  }
  const itemVariance = itemVarianceOn(learner, item, day);
  const noise = runVariance(learner);
  const shared = gains[0]! + gains[row]! + (isKind ? gains[KINDNESS]! : 0);
  const square = shared + itemVariance + noise;
  const spread = Math.sqrt(square);
  const kindness = isKind ? effects[KINDNESS]! : 0;
  const distance = meanOn(learner, item, day) + kindness - levelOf(word.tempo);
  listen(word.isOwn ? learner.cuts : START_CUTS, word.fluency, distance, spread);
  if (word.isOwn) learnRating(learner, word, spread, noise / square);
  const move = (word.weight * told.shift) / spread;
  const shrink = (word.weight * told.sharpening) / square;
  for (let i = 0; i < size; i++) {
    effects[i]! += gains[i]! * move;
    for (let j = 0; j < size; j++) {
      covariance[i * EFFECTS + j]! -= gains[i]! * gains[j]! * shrink;
    }
  }
  residual[item.index]! += itemVariance * move;
  variance[item.index]! -= itemVariance * itemVariance * shrink;
  return chanceAt(distance, square);
}

/** Lets the days since the last run of all pass. Changes the learner. */
function passDays(learner: Learner, day: number): void {
  const { covariance, clock } = learner;
  const drift = abilityDrift(learner, day);
  if (drift > 0) for (let i = 0; i < KINDNESS; i++) covariance[i * (EFFECTS + 1)]! += drift;
  clock[0] = Math.max(clock[0]!, day);
}

/** What was played, and what was said of it. */
export interface JudgedRun {
  readonly tempo: Tempo;
  readonly fluency: Fluency;
  /** Day number. */
  readonly day: number;
  /** Without one, the player. */
  readonly judge?: Judge;
  /** What a take says of a run that the player rated. */
  readonly heard?: Heard | null;
}

/** Takes one rated run in. Changes the learner. */
export function observe(learner: Learner, item: Item, run: JudgedRun): void {
  const { tempo, fluency, day, judge = 'player', heard = null } = run;
  const isOwn = judge === 'player';
  passDays(learner, day);
  const share = isOwn && heard !== null ? TAKE_TRUST * heard.certainty : 0;
  const chance = hear(learner, item, day, { tempo, fluency, isOwn, weight: 1 - share });
  noteForetold(learner, chance, fluency >= EVEN);
  if (share > 0) {
    hear(learner, item, day, { tempo, fluency: heard!.fluency, isOwn: false, weight: share });
  }
  learner.variance[item.index] = itemVarianceOn(learner, item, day) + RUN_DRIFT;
  practise(learner, item, day, fluency === 0);
}

/** Takes in what was marked in an examination, which is no practice. Changes the learner. */
export function observeMark(learner: Learner, item: Item, run: JudgedRun): void {
  const { tempo, fluency, day, judge = 'player' } = run;
  passDays(learner, day);
  hear(learner, item, day, { tempo, fluency, isOwn: judge === 'player', weight: 1 });
}
