/**
 * The chance to pass an examination on a day, if nothing is played until then, and the items that cost most of it.
 *
 * The model: an item comes out at least even with the chance that readiness gives it, but the items of one examination
 * rise and fall together. What they share is what the learner model does not know of the ability and of the ways of
 * playing, and the day: a good or a bad one moves all by DAY_SPREAD of tempo, which is a part of the spread that single
 * runs have, so that the chance of each item stays what it is. Draws and days are sampled; how many of a draw come out
 * even on a day is then computed exactly. Nerves before a jury are not in it.
 */
import type { Day } from '../../log/events';
import type { ExaminationSettings } from '../../log/examination';
import type { Programme } from '../../log/programme';
import type { Item, Way } from '../../music/deck';
import type { Learner } from '../../learning/learner';
import { chanceAt, marginOf, sharedCovariance } from '../../learning/prediction';
import { type Chance, chanceOf } from './chance';
import { factorOf } from './factor';
import { askedTempo, drawFrom, poolOf } from './draw';
import { passChance, pivotChance } from './tally';

/** Day-to-day variation, in octaves of tempo: 5 per cent (check values 5.3, P). */
export const DAY_SPREAD = Math.log2(1.05);

/** Draws: the chance is then told to within one or two per cent. */
const SAMPLES = 2000;
const SEED = 1;

/** An item before the draw: octaves above its tempo, the variance of its own, and which shift it shares with others. */
export interface Candidate {
  readonly margin: number;
  readonly variance: number;
  readonly group: number;
}

export interface PassQuestion {
  readonly candidates: readonly Candidate[];
  /** Lower triangular factor of the covariance of the groups' shifts, row by row. */
  readonly factor: readonly (readonly number[])[];
  readonly count: number;
  readonly toPass: number;
}

export interface PassAnswer {
  readonly chance: number;
  /** By candidate: how much the chance would rise if it were sure to come out even. */
  readonly costs: readonly number[];
}

export interface Forecast {
  readonly chance: number;
  /** Those that cost most, most first. */
  readonly costly: readonly { readonly item: Item; readonly cost: number }[];
}

/** Samples draws and days. The answer is the same for the same chance. */
export function answerOf(question: PassQuestion, samples: number, chance: Chance): PassAnswer {
  const { candidates, factor, count, toPass } = question;
  const costs = new Float64Array(candidates.length);
  const places = candidates.map((_, place) => place);
  let passed = 0;
  for (let i = 0; i < samples; i++) {
    const drawn = drawFrom(places, count, chance.share);
    const shifts = shiftsOf(factor, chance);
    const evens = drawn.map((place) => {
      const { margin, variance, group } = candidates[place]!;
      return chanceAt(margin + shifts[group]!, variance);
    });
    passed += passChance(evens, toPass);
    drawn.forEach((place, j) => {
      costs[place]! += (1 - evens[j]!) * pivotChance(evens, j, toPass);
    });
  }
  return { chance: passed / samples, costs: [...costs].map((cost) => cost / samples) };
}

/** One day: how far it moves each group, in octaves. */
function shiftsOf(factor: PassQuestion['factor'], chance: Chance): readonly number[] {
  const normals = factor.map(() => chance.normal());
  return factor.map((row) => row.reduce((sum, weight, k) => sum + weight * normals[k]!, 0));
}

/** The question that an examination asks of the learner model on a day. */
export function questionOf(
  learner: Learner,
  programme: Programme,
  settings: ExaminationSettings,
  day: Day,
): PassQuestion {
  const pool = poolOf(programme, settings);
  const ways: readonly Way[] = settings.stages;
  const candidates = pool.map((item): Candidate => {
    const tempo = askedTempo(programme, item, settings.tempoPercent);
    const { margin, variance } = marginOf(learner, item, tempo, day);
    return { margin, variance: variance - DAY_SPREAD ** 2, group: ways.indexOf(item.way) };
  });
  const covariance = ways.map((one) =>
    ways.map((other) => sharedCovariance(learner, one, other, day) + DAY_SPREAD ** 2),
  );
  const { count, toPass } = settings;
  return { candidates, factor: factorOf(covariance), count, toPass };
}

export interface ForecastOptions {
  readonly learner: Learner;
  readonly programme: Programme;
  readonly settings: ExaminationSettings;
  readonly day: Day;
}

/** The same for the same learner and settings. */
export function forecastOf({ learner, programme, settings, day }: ForecastOptions): Forecast {
  const question = questionOf(learner, programme, settings, day);
  const { chance, costs } = answerOf(question, SAMPLES, chanceOf(SEED));
  const costly = poolOf(programme, settings)
    .map((item, place) => ({ item, cost: costs[place]! }))
    .toSorted((a, b) => b.cost - a.cost || a.item.index - b.item.index);
  return { chance, costly };
}
