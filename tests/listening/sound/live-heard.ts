/** Seeded runs played into the live ear as a microphone brings them in, and how its lights and its place agree with them. */
import { type LiveEar, liveEar } from '../../../shared/listening/sound/live-ear';
import type { Sound } from '../../../shared/listening/sound/spectrum';
import type { Hand } from '../../../shared/music/fingering/types';
import type { LiveTrial, Struck } from './live-trials';

/** Samples that come in together. */
const TOGETHER = 2048;
/** Seconds within which notes are of one moment. */
const MOMENT = 0.1;
/** Seconds after the last note of an arpeggio in which the next one must have been turned to. */
const IN_TIME = 0.6;

export interface LiveOutcome {
  /** Notes that were played right and not begun again, and those of them that are lit at the end. */
  readonly right: number;
  readonly lit: number;
  /** Wrong and missed notes; all lights at the end, and those that are of no right note. */
  readonly faults: number;
  readonly lights: number;
  readonly falsely: number;
  /** Seconds from each right note to its light. */
  readonly delays: readonly number[];
  /** Seconds from the last note of each arpeggio until its place was told; null if that was not in time. */
  readonly ends: readonly (number | null)[];
  /** Whether an arpeggio was turned to before its first note. */
  readonly isEarly: boolean;
  /** Seconds of sound, and of work. */
  readonly length: number;
  readonly work: number;
  readonly spoilt: ReturnType<LiveEar['heard']>['spoilt'];
}

interface Told {
  /** Seconds of the sound. */
  readonly at: number;
  readonly step: number;
  readonly lit: ReadonlySet<string>;
}

const nameOf = (hand: Hand, step: number): string => `${hand} ${step}`;

/** What the ear tells after each piece of the sound. */
function tell(ear: LiveEar, { samples, rate }: Sound): { told: readonly Told[]; work: number } {
  const told: Told[] = [];
  const start = process.cpuUsage();
  for (let from = 0; from + TOGETHER <= samples.length; from += TOGETHER) {
    ear.add(samples.slice(from, from + TOGETHER));
    const { step, lit } = ear.heard();
    const names = (['right', 'left'] as const).flatMap((hand) =>
      [...lit[hand]].map((one) => nameOf(hand, one)),
    );
    told.push({ at: (from + TOGETHER) / rate, step, lit: new Set(names) });
  }
  const { user, system } = process.cpuUsage(start);
  return { told, work: (user + system) / 1e6 };
}

/** The tuning of the piano is found from the sound, as nothing was checked before. */
export function liveOutcomeOf(trial: LiveTrial, sound: Sound): LiveOutcome {
  const { expected, struck, set } = trial;
  const ear = liveEar(expected, { rate: sound.rate, tempo: set, tuning: null });
  const { told, work } = tell(ear, sound);
  const last = told.at(-1)!.lit;
  const notes = notesOf(trial);
  const isRight = (name: string) => notes.get(name)?.isRight === true;
  const right = [...notes.keys()].filter(isRight);
  return {
    right: right.length,
    lit: right.filter((name) => last.has(name)).length,
    faults: notes.size - right.length,
    lights: last.size,
    falsely: [...last].filter((name) => !isRight(name)).length,
    delays: right.flatMap((name) => {
      const { on } = notes.get(name)!;
      const first = told.find(({ at, lit }) => at > on && lit.has(name));
      return first === undefined ? [] : [first.at - on];
    }),
    ends: expected.parts.flatMap(({ to }) => endsOf(to, struck, told)),
    isEarly: isEarly(trial, told),
    length: sound.samples.length / sound.rate,
    work,
    spoilt: ear.heard().spoilt,
  };
}

/** What came of each expected note that was reached, the last time that it was due. */
function notesOf({ expected, struck }: LiveTrial) {
  const notes = new Map<string, { readonly on: number; readonly isRight: boolean }>();
  for (const { step, on } of struck) {
    const together = struck.filter((one) => one.step === step && Math.abs(one.on - on) < MOMENT);
    for (const { hand, key } of expected.steps[step]!) {
      const isRight = together.some(({ midi }) => midi === key.midi);
      notes.set(nameOf(hand, step), { on, isRight });
    }
  }
  return notes;
}

/** Each time that an arpeggio was played to its last step. */
function endsOf(
  to: number,
  struck: readonly Struck[],
  told: readonly Told[],
): readonly (number | null)[] {
  return struck.flatMap(({ step, on }, i) => {
    const before = struck.slice(0, i).findLast((one) => one.step !== step);
    const isEnd = step === to && struck[i + 1]?.step !== to && before?.step === to - 1;
    if (!isEnd) return [];
    const reached = told.find(({ at, step: place }) => at > on - MOMENT && place >= to);
    const late = (reached?.at ?? Infinity) - on;
    return [late <= IN_TIME ? late : null];
  });
}

/** Where the notes that are played after a restart are those that would come next, nobody can tell. */
function isEarly({ expected, struck }: LiveTrial, told: readonly Told[]): boolean {
  const partAt = (step: number) => expected.parts.findLastIndex(({ from }) => from <= step);
  let [next, reached] = [0, 0];
  return told.some(({ at, step }) => {
    for (; next < struck.length && struck[next]!.on <= at; next++) {
      reached = Math.max(reached, struck[next]!.step);
    }
    const sounding = struck[next - 1]?.midi;
    const couldBe = expected.steps[step]?.some(({ key }) => key.midi === sounding);
    return partAt(step) > partAt(reached) && couldBe !== true;
  });
}

export interface LiveSummary {
  readonly runs: number;
  /** Shares of the right notes that are lit, and of the lights that are false; of the faults that are lit. */
  readonly lit: number;
  readonly falsely: number;
  readonly faultsLit: number;
  /** Seconds until half and nine in ten of the lights were lit. */
  readonly median: number;
  readonly most: number;
  readonly ends: number;
  readonly endsRight: number;
  readonly early: number;
  /** Share of one core. */
  readonly work: number;
}

export function liveSummaryOf(outcomes: readonly LiveOutcome[]): LiveSummary {
  const sum = (of: (one: LiveOutcome) => number) => outcomes.reduce((n, one) => n + of(one), 0);
  const delays = outcomes.flatMap((one) => one.delays).toSorted((a, b) => a - b);
  const ends = outcomes.flatMap((one) => one.ends);
  return {
    runs: outcomes.length,
    lit: sum(({ lit }) => lit) / sum(({ right }) => right),
    falsely: sum(({ falsely }) => falsely) / sum(({ lights }) => lights),
    faultsLit:
      sum(({ falsely }) => falsely) /
      Math.max(
        1,
        sum(({ faults }) => faults),
      ),
    median: delays[delays.length >> 1] ?? NaN,
    most: delays[Math.floor(0.9 * delays.length)] ?? NaN,
    ends: ends.length,
    endsRight: ends.filter((late) => late !== null).length,
    early: outcomes.filter((one) => one.isEarly).length,
    work: sum(({ work }) => work) / sum(({ length }) => length),
  };
}
