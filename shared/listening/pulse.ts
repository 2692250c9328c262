/**
 * The steady tempo under a playing, and by how much each note leaves it.
 *
 * After the grid of van Vugt, Jabusch & Altenmueller 2012 (Front. Psychol. 3:495): regular times fitted to the onsets by
 * least squares, here begun anew after each hesitation, so that one wait does not pass for a slower tempo; unevenness as
 * the standard deviation of the times from note to note (Jabusch 2006), a steady change of tempo taken out before.
 */
import { leastWait } from '../log/take-limits';
import type { Onset } from './attempt';
import {
  deviation,
  leastSquares,
  type Line,
  mean,
  median,
  medianLine,
  robustDeviation,
} from './statistics';

/** One time from note to note. */
export interface Interval {
  /** The step it leads to, and how many steps it takes: more than one where notes are missing. */
  readonly step: number;
  readonly steps: number;
  /** Seconds. */
  readonly length: number;
}

interface Moment {
  readonly step: number;
  readonly on: number;
  readonly pass: number;
}

export interface Pulse {
  /** Seconds from note to note, by least squares. */
  readonly interval: number;
  /** Seconds from the note before to the note of a step, as it would be without unevenness. */
  readonly dueAt: (step: number) => number;
  /** Per cent by which the tempo changes over the part; 0 where it cannot be told from chance, or be heard. */
  readonly drift: number;
}

/** Fewest intervals of which a tempo can be told, and a change of tempo. */
const FEWEST = 4;
const FEWEST_FOR_DRIFT = 8;
/** Standard errors of a change of tempo that do not come by chance, and more with few notes (after Student 1908). */
const SURE_DRIFT = 3.9;
const FEW = 5;
/** By how much more a spread of few others is to be doubted, likewise. */
const FEW_OTHERS = 2;
/** Per cent: with six intervals 3 per cent are just heard (Drake & Botte 1993). */
const AUDIBLE_DRIFT = 3;

/** Seconds by which a note must be late to count as a hesitation; `sd` is what is usual in this playing. */
export const leastDelay = (interval: number, sd: number): number =>
  leastWait(1000 * interval, 1000 * sd) / 1000;

/** From each note to the next of the same pass. */
export function intervalsOf(moments: readonly Moment[]): readonly Interval[] {
  return moments.slice(1).flatMap(({ step, on, pass }, i) => {
    const before = moments[i]!;
    const steps = step - before.step;
    return pass === before.pass && steps > 0 ? [{ step, steps, length: on - before.on }] : [];
  });
}

/** One moment for each step: the mean of what the hands played there. */
export function momentsOf(hands: readonly (readonly Onset[])[]): readonly Moment[] {
  const byStep = new Map<number, Onset[]>();
  for (const onset of hands.flat())
    byStep.set(onset.step, [...(byStep.get(onset.step) ?? []), onset]);
  return [...byStep.entries()]
    .toSorted(([a], [b]) => a - b)
    .map(([step, all]) => ({
      step,
      on: mean(all.map(({ heard }) => heard.on))!,
      pass: all[0]!.pass,
    }));
}

/** In the middle of an interval, as that is where its length was. */
const pointOf = ({ step, steps, length }: Interval) => ({
  x: step - steps / 2,
  y: length / steps,
});

const offOf = (line: Line, interval: Interval): number => {
  const { x, y } = pointOf(interval);
  return y - line.at(x);
};

/** Intervals that lie near a line: neither hesitations nor breaks. */
function near(line: Line, intervals: readonly Interval[]): readonly Interval[] {
  const offs = intervals.map((interval) => offOf(line, interval));
  const usual = usualAmong(offs, line.at(intervals[0]?.step ?? 0));
  return intervals.filter((_, i) => usual.has(i));
}

/**
 * Which of the seconds by which intervals are too long are no hesitations. Each is held against the spread of the others
 * (externally studentised residuals: Cook & Weisberg 1982, from memory), as among few notes a wait hides in the spread that
 * it makes; before that, against a spread that several waits do not move.
 */
function usualAmong(offs: readonly number[], interval: number): ReadonlySet<number> {
  const most = leastDelay(interval, robustDeviation(offs, 0));
  let usual = [...offs.keys()].filter((i) => Math.abs(offs[i]!) <= most);
  while (usual.length > FEWEST) {
    const middle = median(usual.map((i) => offs[i]!))!;
    const far = usual.toSorted((a, b) => Math.abs(offs[b]! - middle) - Math.abs(offs[a]! - middle));
    const others = far.slice(1).map((i) => offs[i]!);
    const spread = deviation(others)! * (1 + FEW_OTHERS / others.length);
    if (Math.abs(offs[far[0]!]! - mean(others)!) <= leastDelay(interval, spread)) break;
    usual = far.slice(1);
  }
  return new Set(usual);
}

/** The pulse of a playing; null with too few notes. `last` is the last step, on which a player may broaden. */
export function pulseOf(moments: readonly Moment[], last: number): Pulse | null {
  const all = intervalsOf(moments);
  const inside = all.filter(({ step }) => step < last);
  const whole = inside.filter(({ steps }) => steps === 1);
  if (whole.length < FEWEST) return null;
  const rough = medianLine(whole.map(pointOf));
  const steady = near(rough, whole);
  const fine = leastSquares(steady.map(pointOf));
  const kept = near(fine, whole);
  const line = leastSquares(kept.map(pointOf));
  const interval = gridInterval(moments, new Set(near(line, all).map(({ step }) => step)));
  const drift = driftOf(line, kept, last);
  const flat = mean(kept.map(({ length }) => length))!;
  return { interval, drift, dueAt: (step) => (drift === 0 ? flat : line.at(step - 0.5)) };
}

/** Least squares with one slope, and a beginning of its own for each stretch without a hesitation. */
function gridInterval(moments: readonly Moment[], steady: ReadonlySet<number>): number {
  const stretches: Moment[][] = [];
  for (const moment of moments) {
    if (stretches.length > 0 && steady.has(moment.step)) stretches.at(-1)!.push(moment);
    else stretches.push([moment]);
  }
  let [product, spread] = [0, 0];
  for (const stretch of stretches) {
    const middle = mean(stretch.map(({ step }) => step))!;
    for (const { step, on } of stretch) {
      product += (step - middle) * on;
      spread += (step - middle) ** 2;
    }
  }
  return product / spread;
}

function driftOf(line: Line, kept: readonly Interval[], last: number): number {
  const sd = deviation(
    kept.map((interval) => offOf(line, interval)),
    2,
  );
  if (sd === null || kept.length < FEWEST_FOR_DRIFT) return 0;
  const xs = kept.map((interval) => pointOf(interval).x);
  const middle = mean(xs)!;
  const spread = Math.sqrt(xs.reduce((sum, x) => sum + (x - middle) ** 2, 0));
  const surely = SURE_DRIFT * (1 + FEW / (kept.length - 2));
  const isChance = Math.abs(line.slope) < (surely * sd) / spread;
  const drift = (line.at(0.5) / line.at(last - 0.5) - 1) * 100;
  return isChance || Math.abs(drift) < AUDIBLE_DRIFT ? 0 : drift;
}

/** Seconds by which each interval is longer than is due. */
export const lateBy = (pulse: Pulse, { step, steps, length }: Interval): number => {
  let due = 0;
  for (let k = 0; k < steps; k++) due += pulse.dueAt(step - k);
  return length - due;
};

/** Standard deviation in seconds of one hand's intervals, without its hesitations; null with too few. */
export function unevennessOf(pulse: Pulse, intervals: readonly Interval[]): number | null {
  const lates = intervals.filter(({ steps }) => steps === 1).map((one) => lateBy(pulse, one));
  const kept = usualAmong(lates, pulse.interval);
  const usual = lates.filter((_, i) => kept.has(i));
  return usual.length < FEWEST ? null : deviation(usual, 2);
}
