/** From where on what was measured of a take counts: as late, as apart, as uneven. */
import type { Grouping } from '../music/tempo';
import type { HandTake, RunTake } from './run-take';

/** Milliseconds: order of two sounds is heard by three in four at 22 ms (Sapp 2005, informal). */
export const TOGETHER = 22;
/** Milliseconds from which a gap between notes counts as broken (P). */
export const BROKEN = -20;
/** Just noticeable units up to which playing counts as good (P), as professionals have 1.4 at four notes of 125 ms, … */
export const GOOD = 2.5;
/** … and as fair (P); beyond it is uneven. */
export const FAIR = 4;
/** A stop: a beat long, or a second, but never less than this. Milliseconds (P). */
const SHORTEST_STOP = 400;
const LONGEST_STOP = 1000;
/** Milliseconds. What is later by less is unevenness and no hesitation (P): twice the 2.5 per cent of the ear and more. */
const LEAST_WAIT = 40;
const LEAST_WAIT_SHARE = 0.06;
/** Standard deviations that do not come by chance within a run (P). */
const SURELY = 4.2;

/**
 * Unevenness in just noticeable units: one displaced tone is heard from 6 ms, or 2.5 per cent of slower notes (Friberg &
 * Sundberg 1995, J. Acoust. Soc. Am. 98:2524). Both in milliseconds. Professionals at 125 ms: 8 to 9 ms, 1.4 units.
 */
export const unitsOf = (unevenness: number, interval: number): number =>
  unevenness / leastHeard(interval);

/** Milliseconds of one unit: what is just heard where notes come so many milliseconds apart. */
export const leastHeard = (interval: number): number => Math.max(6, 0.025 * interval);

/** Milliseconds from note to note; null without a tempo. */
export const intervalOf = ({ tempo }: RunTake): number | null =>
  tempo === null ? null : 60_000 / tempo;

/** Milliseconds by which a note must be late to count as a hesitation; `sd` is what is usual in this playing, in ms. */
export const leastWait = (interval: number, sd: number): number =>
  Math.max(LEAST_WAIT, LEAST_WAIT_SHARE * interval, SURELY * sd);

/** Milliseconds from which a wait of a hand counts as a hesitation. */
export const leastWaitOf = (hand: HandTake, interval: number): number =>
  leastWait(interval, hand.unevenness ?? 0);

/** Milliseconds from which the beat is lost. */
export const leastStop = (interval: number, grouping: Grouping): number =>
  Math.max(SHORTEST_STOP, Math.min(LONGEST_STOP, grouping * interval));
