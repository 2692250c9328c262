/**
 * An invented learner: hidden truth, rater and calendar. The planner sees none of this, only the rated runs. Nothing
 * here is the app's own formula, so that its estimates are as wrong as estimates are.
 *
 * Unit of level: log2 of the metronome mark at four notes a beat. Every number that is not anchored is marked
 * "assumed"; anchors are rows of the parameter set for simulated learners (literature review of the project, 5.3).
 */
import type { Fluency, Judge } from '../../shared/log/events';
import type { Random } from '../../src/demo/random';
import { cumulative } from '../../shared/learning/normal';

/** How a family's learners learn and forget. */
export interface Truth {
  /** All that practice changes, so that a copy is one `set`. */
  readonly state: Float64Array;
  /** Level at which an item comes out at least even half the time, as a musician hears it, when warm. */
  level(index: number, day: number): number;
  /** One run; `quality` is 1 for an even one and less for others. */
  practise(index: number, day: number, quality: number): void;
}

export type FamilyName = 'skill' | 'traces' | 'components';
export const FAMILIES: readonly FamilyName[] = ['skill', 'traces', 'components'];

export type GroupName = 'uniform' | 'uneven' | 'beginner';
export const GROUPS: readonly GroupName[] = ['uniform', 'uneven', 'beginner'];

export interface Traits {
  readonly group: GroupName;
  /** Notes a minute asked for over four octaves together. */
  readonly target: number;
  /** General level of one hand over two octaves before anything is learnt; sd a little under 0.25 (5.3). */
  readonly start: number;
  /** Speed of learning, 1 on average; log-normal between people, sd 0.25 (5.3). One in five learns at 0.55 (assumed). */
  readonly rate: number;
  /** Spread of items, hands and chords around the general level (assumed). */
  readonly ownSpread: number;
  readonly chordSpread: number;
  /** What the left hand lacks. */
  readonly leftLag: number;
  /** Starts with part of the way done, so at hands together over two octaves. */
  readonly isHalfWay: boolean;
  /** What this student calls even too soon (above 0) or too late, in octaves: sd 0.1 (assumed). */
  readonly bias: number;
  /** Spread of one run and of its rating together: log-normal around 0.27 (evenness noise 15 to 20 %, 5.3). */
  readonly noise: number;
  /** Days without practice: share, and the week away (assumed). */
  readonly missed: number;
  readonly away: number;
}

/** LCM Grade 8: minim 60 in quavers; for a beginner what Arkansas State asks in the first year: triplets at 60. */
const TARGET = 240;
const BEGINNER_TARGET = 180;
/** Spread of a day as a whole: 4 to 6 % of tempo (5.3). */
const DAY_NOISE = 0.07;
/** First runs of a day are 3 to 8 % slower (5.3). */
const COLD = 0.08;
const COLD_RUNS = 2;
/** Share of runs that break down by accident, in one family (assumed). */
const LAPSES = 0.04;
/** Where uneven, even and the rest begin, by family: unlike the model's own (assumed). */
const CUTS: Readonly<Record<FamilyName, readonly number[]>> = {
  skill: [-0.7, -0.35, 0, 0.5],
  traces: [-0.9, -0.35, 0, 0.35],
  components: [-0.6, -0.25, 0, 0.6],
};

/** A teacher hears without bias and not without noise, and has a use of the levels of the own (assumed). */
const TEACHER_NOISE = 0.1;
const TEACHER_CUTS = [-0.75, -0.4, 0, 0.5];

export function drawTraits(group: GroupName, number: number, random: Random): Traits {
  const isBeginner = group === 'beginner';
  const isUneven = group === 'uneven';
  return {
    group,
    target: isBeginner ? BEGINNER_TARGET : TARGET,
    start: Math.log2(isBeginner ? 30 : 44) + 0.2 * random.normal(),
    rate: (number % 5 === 4 ? 0.55 : 1) * Math.exp(0.25 * random.normal()),
    ownSpread: isUneven ? 0.17 : 0.1,
    chordSpread: isUneven ? 0.17 : 0.06,
    leftLag: isUneven ? 0.25 + 0.1 * random.normal() : 0.1,
    isHalfWay: !isBeginner && number % 4 === 3,
    bias: 0.1 * random.normal(),
    noise: 0.27 * Math.exp(0.2 * random.normal()),
    missed: 0.15,
    away: 40 + Math.floor(30 * random.share()),
  };
}

/** Whether a day is one of practice. */
export const isPractised = (traits: Traits, day: number, random: Random): boolean =>
  random.share() >= traits.missed && (day < traits.away || day >= traits.away + 7);

/** Logistic cumulative distribution with standard deviation 1. */
const logistic = (z: number): number => 1 / (1 + Math.exp((-z * Math.PI) / Math.sqrt(3)));
const logisticDraw = (random: Random): number => {
  const share = Math.min(1 - 1e-9, Math.max(1e-9, random.share()));
  return (Math.log(share / (1 - share)) * Math.sqrt(3)) / Math.PI;
};

export class Learner {
  /** Day of the last run and how many there were on it, for the cold start. */
  #today = -1;
  #runsToday = 0;
  #form = 0;

  constructor(
    readonly family: FamilyName,
    readonly traits: Traits,
    readonly truth: Truth,
    readonly random: Random,
  ) {}

  /** Plays an item, which the player rates or a teacher marks; learns from it. */
  play(index: number, mark: number, day: number, judge: Judge = 'player'): Fluency {
    const { traits, random, truth, family } = this;
    if (day !== this.#today) {
      this.#today = day;
      this.#runsToday = 0;
      this.#form = DAY_NOISE * random.normal();
    }
    const cold = this.#runsToday < COLD_RUNS ? COLD : 0;
    this.#runsToday += 1;
    const over = truth.level(index, day) + this.#form - cold - mark;
    const draw = family === 'traces' ? logisticDraw(random) : random.normal();
    const heard = over + traits.noise * draw;
    // Wrong runs teach 0.3 of even ones (5.3), and playing far below one's level teaches less (assumed).
    const effort = Math.min(1, Math.max(0.4, 1.2 - 0.6 * over));
    truth.practise(index, day, effort * (heard >= 0 ? 1 : heard >= -0.35 ? 0.6 : 0.3));
    if (family === 'components' && random.share() < LAPSES) return 0;
    const isOwn = judge === 'player';
    const rated = heard + (isOwn ? traits.bias : TEACHER_NOISE * random.normal());
    return (isOwn ? CUTS[family] : TEACHER_CUTS).filter((cut) => rated >= cut).length as Fluency;
  }

  /** Probability that a run on an ordinary day, warm, is rated at least even, and that a teacher would agree. */
  chanceEven(index: number, mark: number, day: number): { rated: number; heard: number } {
    const { traits, truth, family } = this;
    const spread = Math.hypot(traits.noise, DAY_NOISE);
    const over = truth.level(index, day) - mark;
    const below = family === 'traces' ? logistic : cumulative;
    const keep = family === 'components' ? 1 - LAPSES : 1;
    return {
      rated: keep * below((over + traits.bias) / spread),
      heard: keep * below(over / spread),
    };
  }
}
