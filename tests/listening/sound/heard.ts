/** Trials rendered, spoiled and heard, and summed up by how the hands play. */
import type { Finding } from '../../../shared/listening/findings';
import { type Hearing, hear } from '../../../shared/listening/sound/hear';
import { mean, median } from '../../../shared/listening/statistics';
import { seededRandom } from '../performer';
import { rendered } from './fluidsynth';
import { PLACES, retuned, spoiled } from './spoil';
import { type Group, groupOf, type Outcome, outcomeOf, type Trial, trialOf } from './trials';

export interface HeardTrial {
  readonly seed: number;
  readonly trial: Trial;
  readonly hearing: Hearing;
  readonly outcome: Outcome;
  /** Seconds of sound, and of work. */
  readonly length: number;
  readonly work: number;
}

/** The takes of the seeds as `play` sounds them. The tuning of the piano is found from the sound. */
export function heardTrials(seeds: readonly number[], play = rendered): readonly HeardTrial[] {
  const trials = seeds.map(trialOf);
  const sounds = play(trials.map(({ take }) => take));
  return trials.map((trial, i): HeardTrial => {
    const seed = seeds[i]!;
    const piano = retuned(sounds[i]!, trial.tuning);
    const sound = spoiled(piano, PLACES[trial.place], seededRandom(seed));
    const start = process.cpuUsage();
    const hearing = hear(sound, trial.expected, {
      tempo: trial.tempo,
      tuning: null,
      isFiltered: false,
    });
    const { user, system } = process.cpuUsage(start);
    const outcome = outcomeOf(trial, hearing);
    const length = sound.samples.length / sound.rate;
    return { seed, trial, hearing, outcome, length, work: (user + system) / 1e6 };
  });
}

export interface Summary {
  readonly runs: number;
  /** F1 of the moments within 25 and 50 ms, after one offset of each run. */
  readonly within25: number;
  readonly within50: number;
  /** Mean size of an onset's error in ms, and the median offset of the runs. */
  readonly error: number;
  readonly offset: number;
  /** Share of the notes played right that are not called faults; how many were not sure. */
  readonly right: number;
  readonly unsure: number;
  readonly found: Readonly<Record<'hesitation' | 'wrong' | 'missed', readonly boolean[]>>;
  readonly invented: number;
  /** Of these the kinds that are planted, hesitations and stops as one. */
  readonly falsely: Readonly<Record<keyof Outcome['found'], number>>;
  readonly cleanRuns: number;
  /** Runs without a fault in which nothing at all is said. */
  readonly clean: number;
  readonly tempo: number;
  readonly unevenness: number;
}

const isNote = ({ kind }: Finding): boolean => ['wrong', 'missed', 'extra'].includes(kind);

export const ofGroup = (all: readonly HeardTrial[], group: Group): readonly HeardTrial[] =>
  all.filter(({ trial }) => groupOf(trial.item) === group);

export function summaryOf(outcomes: readonly HeardTrial[]): Summary {
  const sum = (of: (one: HeardTrial) => number) => outcomes.reduce((n, one) => n + of(one), 0);
  const offs = outcomes.flatMap(({ outcome }) => {
    const offset = median(outcome.offs) ?? 0;
    return outcome.offs.map((off) => Math.abs(off - offset) * 1000);
  });
  const moments = sum(({ outcome }) => outcome.played + outcome.heard);
  const within = (most: number) => (2 * offs.filter((off) => off <= most).length) / moments;
  const found = (kind: keyof Outcome['found']) =>
    outcomes.flatMap(({ outcome }) => outcome.found[kind]);
  const falsely = (...kinds: readonly Finding['kind'][]) =>
    sum(({ outcome }) => outcome.invented.filter(({ kind }) => kinds.includes(kind)).length);
  const clean = outcomes.filter(({ trial }) => trial.isClean);
  const called = sum(({ outcome }) => outcome.invented.filter(isNote).length);
  return {
    runs: outcomes.length,
    within25: within(25),
    within50: within(50),
    error: mean(offs) ?? 0,
    offset: 1000 * (median(outcomes.map(({ outcome }) => median(outcome.offs) ?? 0)) ?? 0),
    right: 1 - called / sum(({ outcome }) => outcome.notes),
    unsure: sum(({ outcome }) => outcome.unsure),
    found: { hesitation: found('hesitation'), wrong: found('wrong'), missed: found('missed') },
    invented: sum(({ outcome }) => outcome.invented.length),
    falsely: {
      hesitation: falsely('hesitation', 'stop'),
      wrong: falsely('wrong'),
      missed: falsely('missed'),
    },
    cleanRuns: clean.length,
    clean: clean.filter(({ outcome }) => outcome.findings.length === 0).length,
    tempo: mean(outcomes.map(({ outcome }) => Math.abs(outcome.tempo))) ?? 0,
    unevenness: mean(outcomes.map(({ outcome }) => Math.abs(outcome.unevenness))) ?? 0,
  };
}
