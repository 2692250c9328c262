/** What is measured of one hand: waits, unevenness, joins of the keys, the thumb, loudness. */
import type { HandTake } from '../log/run-take';
import type { Onset } from './attempt';
import { intervalsOf, lateBy, leastDelay, type Pulse, unevennessOf } from './pulse';
import { deviation, mean, median } from './statistics';

/** Standard errors beyond which an average is no chance (P): strict, as every run has many averages. */
const SURELY = 4;
/** Milliseconds that a thumb must be late on average, and velocities that it must be louder, to be told at all (P). */
const LEAST_LATE = 15;
const LEAST_ACCENT = 8;
/** Fewest notes of each kind for an average. */
const FEWEST = 3;

export const ms = (seconds: number): number => Math.round(seconds * 1000);
export const tenth = (value: number): number => Math.round(value * 10) / 10;
const orNull = <T>(value: number | null, use: (known: number) => T): T | null =>
  value === null ? null : use(value);

interface Timing {
  /** How many steps the part has. */
  readonly count: number;
  readonly pulse: Pulse | null;
  /** What the other hand played, where both have the time of their moment: it tells when a note came that is not sure. */
  readonly other: readonly Onset[];
}

export function handTake(onsets: readonly Onset[], { count, pulse, other }: Timing): HandTake {
  const own = new Set(onsets.map(({ step }) => step));
  const moments = [...onsets, ...other.filter(({ step }) => !own.has(step))]
    .toSorted((a, b) => a.step - b.step)
    .map(({ step, heard, pass }) => ({ step, on: heard.on, pass }));
  const intervals = intervalsOf(moments);
  const waits = Array.from({ length: count }, (): number | null => null);
  for (const one of intervals) {
    if (pulse && own.has(one.step)) waits[one.step] = ms(lateBy(pulse, one));
  }
  const inside = intervals.filter(({ step }) => step < count - 1);
  const unevenness = pulse && unevennessOf(pulse, inside);
  return {
    waits,
    unevenness: orNull(unevenness, (sd) => tenth(sd * 1000)),
    overlap: overlapOf(onsets),
    thumbLate: pulse && thumbLateOf(onsets, waits, ms(leastDelay(pulse.interval, unevenness ?? 0))),
    ...loudnessOf(onsets),
  };
}

/**
 * Key overlap time, off of a note minus on of the next (Repp 1995, J. Acoust. Soc. Am. 97:3862): the median. The note
 * before the thumb passes under cannot be held by every hand, and is left out.
 */
function overlapOf(onsets: readonly Onset[]): number | null {
  const overlaps = onsets.slice(1).flatMap(({ step, note, heard, pass }, i) => {
    const before = onsets[i]!;
    const follows = step === before.step + 1 && pass === before.pass;
    if (!follows || before.heard.off === null || note.change === 'thumb under') return [];
    return [before.heard.off - heard.on];
  });
  return overlaps.length < FEWEST ? null : orNull(median(overlaps), ms);
}

/**
 * By how much the thumb comes late: least squares of the waits on "to the thumb" (+1) and "from the thumb" (-1), as a
 * late note makes the time before it long and the time after it short. 0 where it may be chance.
 */
function thumbLateOf(
  onsets: readonly Onset[],
  waits: readonly (number | null)[],
  mostUsual: number,
): number | null {
  if (onsets.some(({ note }) => note.finger === null)) return null;
  const isThumb = new Set(onsets.filter(({ note }) => note.finger === 1).map(({ step }) => step));
  const pairs = waits.flatMap((wait, step) =>
    wait === null || Math.abs(wait) > 2 * mostUsual
      ? []
      : [{ wait, x: Number(isThumb.has(step)) - Number(isThumb.has(step - 1)) }],
  );
  const spread = pairs.reduce((sum, { x }) => sum + x * x, 0);
  if (spread < 2 * FEWEST) return null;
  const late = pairs.reduce((sum, { wait, x }) => sum + wait * x, 0) / spread;
  const rest = deviation(pairs.map(({ wait, x }) => wait - late * x)) ?? 0;
  const surely = SURELY * (1 + SURELY / pairs.length);
  // Neighbouring intervals share a note: a thumb's variance is 6/4 of a note's, where 2/2 would be naive.
  const error = rest * Math.sqrt(1.5 / spread);
  return Math.abs(late) < Math.max(LEAST_LATE, surely * error) ? 0 : Math.round(late);
}

function loudnessOf(onsets: readonly Onset[]): Pick<HandTake, 'loudness' | 'thumbAccent'> {
  const known = onsets.flatMap(({ note, heard: { loudness } }) =>
    loudness === null ? [] : [{ loudness, isThumb: note.finger === 1 }],
  );
  const spread = deviation(known.map(({ loudness }) => loudness));
  const of = (thumb: boolean) =>
    known.filter(({ isThumb }) => isThumb === thumb).map(({ loudness }) => loudness);
  const [thumbs, others] = [of(true), of(false)];
  return { loudness: orNull(spread, tenth), thumbAccent: accentOf(thumbs, others) };
}

/** Mean loudness of the thumbs minus that of the others; 0 where it may be chance. */
function accentOf(thumbs: readonly number[], others: readonly number[]): number | null {
  if (thumbs.length < FEWEST || others.length < FEWEST) return null;
  const accent = mean(thumbs)! - mean(others)!;
  const [a, b] = [deviation(thumbs)!, deviation(others)!];
  const error = Math.sqrt(a ** 2 / thumbs.length + b ** 2 / others.length);
  return Math.abs(accent) < Math.max(LEAST_ACCENT, SURELY * error) ? 0 : tenth(accent);
}
