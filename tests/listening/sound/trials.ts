/** Seeded runs with planted faults, and how what was heard of them agrees with what was played. */
import { type Expected, expectedOf } from '../../../shared/listening/expected';
import { type Finding, findingsOf } from '../../../shared/listening/findings';
import { judge } from '../../../shared/listening/judge';
import type { Hearing } from '../../../shared/listening/sound/hear';
import type { RunTake } from '../../../shared/log/run-take';
import { mean } from '../../../shared/listening/statistics';
import type { HeardNote, Take } from '../../../shared/listening/take';
import { DECK, handsOf, type Item } from '../../../shared/music/deck';
import type { Hand } from '../../../shared/music/fingering/types';
import type { Score } from '../../../shared/music/score';
import { scoreOf } from '../../../shared/music/score-of';
import { OPTIONS } from '../../formats/scores';
import { perform, type Planted, seededRandom } from '../performer';
import { SILENCE } from './fluidsynth';
import { PLACES } from './spoil';

const MARKS = [40, 60, 80, 100, 120];
/** Seconds. */
const WAITS = [0.08, 0.12, 0.15];
/** Standard deviation of one onset in seconds: that of professionals, 8 to 9 ms from note to note. */
export const SPREAD = 0.006;
/** Cents of pianos from 430 to 446 Hz. */
const TUNINGS = [-40, -20, 0, 0, 23];

export interface Trial {
  readonly item: Item;
  readonly score: Score;
  readonly expected: Expected;
  /** Notes a minute. */
  readonly tempo: number;
  readonly place: keyof typeof PLACES;
  readonly tuning: number;
  readonly planted: Planted;
  readonly isClean: boolean;
  readonly take: Take;
}

const pick = <T>(values: readonly T[], random: () => number): T =>
  values[Math.floor(random() * values.length)]!;

export type Group = 'one hand' | 'octaves' | 'contrary';
export const groupOf = ({ way }: Item): Group =>
  handsOf(way) !== 'together' ? 'one hand' : way.endsWith('contrary') ? 'contrary' : 'octaves';

export function trialOf(seed: number): Trial {
  const random = seededRandom(seed);
  const group = pick(['one hand', 'one hand', 'octaves', 'contrary'] as const, random);
  const item = pick(
    DECK.filter((one) => groupOf(one) === group),
    random,
  );
  const score = scoreOf([item], { ...OPTIONS, pedal: false });
  const expected = expectedOf(score);
  const isClean = random() < 0.4;
  const planted = isClean ? {} : plantedIn(expected, random);
  const tempo = 4 * pick(MARKS, random);
  return {
    item,
    score,
    expected,
    tempo,
    place: pick(['dry', 'room', 'phone'] as const, random),
    tuning: pick(TUNINGS, random),
    planted,
    isClean,
    take: perform(expected, { random, tempo, spread: SPREAD, planted }),
  };
}

/** A wait, a wrong note and a missed one, each in most of the runs and at places of their own. */
function plantedIn({ steps }: Expected, random: () => number): Planted {
  const places = [2, 5, 8, 10].map((place) => Math.floor((place * (steps.length - 1)) / 12));
  const [wait, wrong, missed] = places.toSorted(() => random() - 0.5) as [number, number, number];
  const hand: Hand = pick(steps[0]!, random).hand;
  const isIn = () => random() < 0.7;
  const keyAt = (step: number) => steps[step]!.find((note) => note.hand === hand)!.key.midi;
  // Not the key before or after: it would have to be struck again while it is down.
  const by = [-2, -1, 1, 2].filter((one) =>
    [wrong - 1, wrong + 1].every((step) => keyAt(step) !== keyAt(wrong) + one),
  );
  return {
    waits: isIn() ? [{ step: wait, seconds: pick(WAITS, random) }] : [],
    wrong: isIn() ? [{ step: wrong, hand, by: pick(by, random) }] : [],
    missed: isIn() ? [{ step: missed, hand }] : [],
  };
}

export interface Outcome {
  /** Seconds by which each moment that was played and heard was heard too late. */
  readonly offs: readonly number[];
  /** Moments that were played, and that were heard. */
  readonly played: number;
  readonly heard: number;
  /** Notes played right, and notes that were not sure. */
  readonly notes: number;
  readonly unsure: number;
  readonly findings: readonly Finding[];
  /** Findings of the kinds that are planted, where nothing was. */
  readonly invented: readonly Finding[];
  /** Whether each planted fault is told; of two hands without the missed upper notes, which are never sure. */
  readonly found: Readonly<Record<'hesitation' | 'wrong' | 'missed', readonly boolean[]>>;
  /** Per cent by which the tempo is off; and the unevenness of the moments, in points of the interval. */
  readonly tempo: number;
  readonly unevenness: number;
}

/** Seconds within which two hands' notes are one moment. */
const MOMENT = 0.06;

/** What was played, each note at the mean time of its moment: the most that can be heard where hands have no time of their own. */
function atMoments({ take, expected }: Trial): Take {
  const hands = expected.steps[0]!.length;
  const moments: HeardNote[][] = [];
  for (const note of take.notes) {
    const last = moments.at(-1);
    if (last && last.length < hands && note.on - last[0]!.on < MOMENT) last.push(note);
    else moments.push([note]);
  }
  const notes = moments.flatMap((moment) => {
    const on = mean(moment.map((note) => note.on))!;
    return moment.map((note): HeardNote => ({ ...note, on }));
  });
  return { ...take, notes };
}

const stepOf = (one: Finding): number => ('step' in one ? one.step : -1);

/** Of both hands on average, in ms. They have the same moments, but not all of their notes are sure. */
function unevennessOf(take: RunTake | null | undefined): number {
  const hands = [take?.hands.right?.unevenness, take?.hands.left?.unevenness];
  return mean(hands.filter((one) => typeof one === 'number')) ?? 0;
}

export function outcomeOf(trial: Trial, { take }: Hearing): Outcome {
  const { expected, score, planted } = trial;
  const atOnce = atMoments(trial);
  const shrink = 2 ** (trial.tuning / 1200);
  // Silence and retuning counted.
  const truth = [...new Set(atOnce.notes.map(({ on }) => (on + SILENCE) / shrink))];
  const heard = [...new Set(take.notes.map(({ on }) => on))];
  const offs = truth.flatMap((at) => {
    const near = heard.map((one) => one - at).toSorted((a, b) => Math.abs(a) - Math.abs(b))[0];
    return near !== undefined && Math.abs(near) < 0.06 ? [near] : [];
  });
  const [measured] = judge(expected, take);
  const [real] = judge(expected, atOnce);
  const findings = measured ? findingsOf(measured, score) : [];
  const has = (kinds: readonly string[], step: number) =>
    findings.some((one) => kinds.includes(one.kind) && stepOf(one) === step);
  const { waits = [], wrong = [], missed = [] } = planted;
  const isTrue = (one: Finding): boolean => {
    const step = stepOf(one);
    if (one.kind === 'hesitation' || one.kind === 'stop') return waits.some((w) => w.step === step);
    // Of two hands the one that played must not be called missing for the other.
    const isHis = (hand: Hand): boolean => one.kind !== 'missed' || one.hand === hand;
    return [...wrong, ...missed].some((w) => w.step === step && isHis(w.hand));
  };
  const both = expected.steps.reduce((sum, step) => sum + step.length, 0);
  return {
    offs,
    played: truth.length,
    heard: heard.length,
    notes: both - wrong.length - missed.length,
    unsure: both - (measured?.notes ?? 0),
    findings,
    invented: findings.filter((one) => !isTrue(one)),
    found: {
      hesitation: waits.map(({ step }) => has(['hesitation', 'stop'], step)),
      wrong: wrong.map(({ step }) => has(['wrong'], step)),
      missed: missed
        .filter(({ hand }) => groupOf(trial.item) === 'one hand' || hand === 'left')
        .map(({ step }) => has(['missed'], step)),
    },
    tempo: 100 * ((measured?.tempo ?? 0) / (trial.tempo * shrink) - 1),
    unevenness: ((unevennessOf(measured) - unevennessOf(real)) * trial.tempo) / 600,
  };
}
