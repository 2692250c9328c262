/** Takes rated runs in: moment matching for an ordinal probit. */
import { EVEN, type Fluency } from '../log/events';
import type { Item } from '../music/deck';
import type { Tempo } from '../music/tempo';
import { EFFECTS, type Learner, levelOf, TENTHS, wayRow } from './learner';
import { abilityDrift, chanceAt, itemVarianceOn, meanOn, runVariance } from './prediction';
import { practise } from './practice';
import { learnRating, listen, told } from './rating';

/** What each run adds to the variance of its item: practice changes it in ways that are not told. */
const RUN_DRIFT = 0.01 ** 2;

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
  variance[item.index] = itemVariance - itemVariance * itemVariance * shrink + RUN_DRIFT;
  practise(learner, item, day, fluency === 0);
}
