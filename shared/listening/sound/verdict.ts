/** What the evidence at a moment says of each expected note. What cannot be told is 'unsure', and no fault. */
import type { ExpectedStep } from '../expected';
import type { Evidence } from './evidence';

export type Verdict =
  | { readonly kind: 'right' }
  | { readonly kind: 'wrong'; readonly midi: number }
  | { readonly kind: 'missed' }
  | { readonly kind: 'unsure' };

export interface Hearability {
  /** The usual total of the evidence at a moment. */
  readonly usual: number;
  /** Whether the room is quiet enough to say that nothing was played. */
  readonly isQuiet: boolean;
}

/** Share of the usual total below which nothing was played. */
const NOTHING = 0.1;
/** Shares of one hand's note: from here on it is right; below FAINT it cannot be told from nothing. */
const PRESENT = 0.25;
const FAINT = 0.06;
/** Share of a note of two hands below which it is not there, or for the upper one not sure. */
const FAINT_TOGETHER = 0.06;
/**
 * Without the lower of two notes an octave apart its odd partials are missing: logarithm of even over odd, which decides
 * where its share is small. Between the two it may be there or not: a small microphone leaves little of the first partials
 * of low notes, which are the odd ones.
 */
const MOSTLY_EVEN = 1.5;
const SURELY_EVEN = 3;
const SMALL = 0.1;
/** Share of the lower of two notes below which it is surely not there; up to FAINT_TOGETHER or SMALL it may be. */
const TINY = 0.03;
/** Share from which another key was played, and how many semitones off it may lie, for one hand and for two. */
const OTHER = 0.3;
const OTHER_TOGETHER = 0.2;
/** The same of two hands where nothing of the expected note is there. */
const OTHER_INSTEAD = 0.1;
const FAR = 11;
const FAR_TOGETHER = 6;
/**
 * Semitones from a key to its partials 2 to 8, and the share up to which a key there may be nothing else. Where nothing of
 * the expected note is there, only the lowest of them are strong enough to pass for another key.
 */
const PARTIALS = new Set([12, 19, 24, 28, 31, 34, 36]);
const STRONG_PARTIALS = new Set([12, 19, 24]);
const MAY_BE_PARTIAL = 0.28;

/** One for each note of the step. */
export function verdictsOf(
  step: ExpectedStep,
  evidence: Evidence,
  { usual, isQuiet }: Hearability,
): readonly Verdict[] {
  if (evidence.total < NOTHING * usual) {
    return step.map(() => (isQuiet ? { kind: 'missed' } : { kind: 'unsure' }));
  }
  const midis = step.map(({ key }) => key.midi);
  const [one, other] = midis as [number, number?];
  if (other === undefined || other === one) {
    const verdict = ofOne(one, evidence);
    return step.map(() => verdict);
  }
  const [low, high] = [Math.min(one, other), Math.max(one, other)];
  const verdicts = ofTwo(low, high, evidence);
  return midis.map((midi) => verdicts[midi === low ? 0 : 1]);
}

const shareOf = ({ amounts, lowest, total }: Evidence, midi: number): number =>
  (amounts[midi - lowest] ?? 0) / total;

function ofOne(midi: number, evidence: Evidence): Verdict {
  const share = shareOf(evidence, midi);
  if (share >= PRESENT) return { kind: 'right' };
  const played = strongest(evidence, midi, { far: FAR, without: [midi] });
  if (share < FAINT && shareOf(evidence, played) >= OTHER) return { kind: 'wrong', midi: played };
  return { kind: 'unsure' };
}

function ofTwo(low: number, high: number, evidence: Evidence): readonly [Verdict, Verdict] {
  const isOctaves = (high - low) % 12 === 0;
  /** The key that was played for one of the two, where `sure` are known to sound. */
  const instead = (midi: number, sure: readonly number[]): number | null => {
    const played = strongest(evidence, midi, { far: FAR_TOGETHER, without: [low, high] });
    const isAbsent = shareOf(evidence, midi) < FAINT_TOGETHER;
    const partials = isAbsent ? STRONG_PARTIALS : PARTIALS;
    const mayBePartial = sure.some((key) => partials.has(played - key));
    const other = isAbsent ? OTHER_INSTEAD : OTHER_TOGETHER;
    const least = mayBePartial ? MAY_BE_PARTIAL : other;
    return played !== midi && shareOf(evidence, played) >= least ? played : null;
  };
  /** Whether a key beside it sounds more, so that what there is of this one comes from other notes. */
  const isOutdone = (midi: number, other: number): boolean => {
    const played = instead(midi, [other]);
    if (played === null || Math.abs(played - other) < Math.abs(played - midi)) return false;
    return shareOf(evidence, played) >= shareOf(evidence, midi);
  };
  const hasLow = hasLower(low, isOctaves, evidence);
  const isLow = hasLow === true && !isOutdone(low, high);
  const isHigh = shareOf(evidence, high) >= FAINT_TOGETHER && !isOutdone(high, low);
  const sure = [...(isLow ? [low] : []), ...(isHigh ? [high] : [])];
  const verdict = (midi: number, isThere: boolean, otherwise: Verdict): Verdict => {
    const played = isThere ? null : instead(midi, sure);
    if (played !== null) return { kind: 'wrong', midi: played };
    return isThere ? { kind: 'right' } : otherwise;
  };
  // The upper of two notes adds mostly to partials that the lower has as well: that it is missing is never sure.
  const absent = { kind: hasLow === null ? 'unsure' : 'missed' } as const;
  return [verdict(low, isLow, absent), verdict(high, isHigh, { kind: 'unsure' })];
}

/** Whether the lower of two notes is there; null where it may be or not. */
function hasLower(low: number, isOctaves: boolean, evidence: Evidence): boolean | null {
  const share = shareOf(evidence, low);
  if (share >= (isOctaves ? SMALL : FAINT_TOGETHER)) return true;
  if (share < TINY) return false;
  if (!isOctaves) return null;
  const evenOverOdd = evidence.evenOverOdd(low);
  if (evenOverOdd < MOSTLY_EVEN) return true;
  return share < FAINT_TOGETHER && evenOverOdd >= SURELY_EVEN ? false : null;
}

/** The strongest key near to another; itself where there is none. */
function strongest(
  evidence: Evidence,
  midi: number,
  { far, without }: { readonly far: number; readonly without: readonly number[] },
): number {
  let [best, most] = [midi, 0];
  for (let key = midi - far; key <= midi + far; key++) {
    const share = without.includes(key) ? 0 : shareOf(evidence, key);
    if (share > most) [best, most] = [key, share];
  }
  return best;
}
