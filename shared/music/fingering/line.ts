/**
 * The notes of a run as the search sees them. The left hand is the right hand in a mirror: pitches are reflected at D,
 * about which the keyboard is symmetrical, so that a black key stays black. All else in this folder then knows one
 * hand only, whose thumb is on the low side: it goes up by passing the thumb under.
 */
import { isBlackKey } from '../sequence';
import { AVERAGE_SPAN, smallness } from './spans';
import { type End, type FingerPlan, FingeringError, type Question } from './types';

export interface Line {
  /** Notes of the chord. */
  readonly size: number;
  readonly octaves: number;
  /** MIDI numbers from the low end to the high end, both bottom notes included: size x octaves + 1. */
  readonly pitches: readonly number[];
  readonly black: readonly boolean[];
  /** Whether the thumb has no white key to go to. */
  readonly allBlack: boolean;
  /** The end from which the run begins. */
  readonly start: End;
  /** How much of a child's hand this one has: 0 for the average hand. */
  readonly smallness: number;
}

const MIRROR = 2 * 62;

const otherEnd = (end: End): End => (end === 'low' ? 'high' : 'low');

function checkQuestion({ keys, octaves }: Question): void {
  const rising = keys.every((key, i) => Number.isInteger(key) && (i === 0 || key > keys[i - 1]!));
  if (keys.length < 2 || !rising || keys.at(-1)! - keys[0]! >= 12)
    throw new FingeringError(`no rising chord within an octave: ${keys.join(' ')}`);
  if (!(Number.isInteger(octaves) && octaves >= 1 && octaves <= 8))
    throw new FingeringError(`${octaves} octaves`);
}

/** The run of a question, over another number of octaves if one is given. Throws a FingeringError for a bad question. */
export function lineOf(question: Question, octaves = question.octaves): Line {
  checkQuestion(question);
  const { keys, hand, start = 'low', span = AVERAGE_SPAN } = question;
  const size = keys.length;
  const rising = Array.from(
    { length: size * octaves + 1 },
    (_, i) => keys[i % size]! + 12 * Math.floor(i / size),
  );
  const pitches = hand === 'right' ? rising : rising.map((pitch) => MIRROR - pitch).toReversed();
  const black = pitches.map((pitch) => isBlackKey(pitch + 120));
  return {
    size,
    octaves,
    pitches,
    black,
    allBlack: black.every(Boolean),
    start: hand === 'right' ? start : otherEnd(start),
    smallness: smallness(span),
  };
}

/** A plan of the mirrored hand as one of the real left hand, and back. */
export function mirrored({ low, pattern, high }: FingerPlan): FingerPlan {
  const size = pattern.length;
  return { low: high, high: low, pattern: pattern.map((_, i) => pattern[(size - i) % size]!) };
}

/** From a hand to the search's hand and back: the plan itself for the right, the mirrored one for the left. */
export const asRightHand = (plan: FingerPlan, hand: Question['hand']): FingerPlan =>
  hand === 'right' ? plan : mirrored(plan);
