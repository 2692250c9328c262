/**
 * Family 3, components. A hand is as fast as its moves from key to key allow, above all the slowest, and moves are
 * shared by all arpeggios that have them: their interval, black or white at both ends, with or without the thumb passing.
 * Knowing the notes belongs to the arpeggio and is soon learnt and soon lost; moves last for months.
 */
import { CHORDS } from '../../../shared/music/chords';
import { STARTING_NOTES } from '../../../shared/music/deck';
import { pitchClassOf } from '../../../shared/music/spelling';
import type { Random } from '../../../src/demo/random';
import type { Traits, Truth } from '../learner';
import {
  ARPEGGIOS,
  arpeggioOf,
  CHORD_COUNT,
  isLong,
  slower,
  usesLeft,
  usesRight,
  wayOf,
} from './shape';

/** Octaves of tempo that a move can gain (assumed); exponential approach per use (0.01 to 0.05 a run, an arpeggio having several). */
const MOVE_GAIN = 1.15;
const MOVE_RATE = 0.0018;
/** Octaves that not knowing the notes costs; how fast they are learnt; half-life in days, as in 5.3. */
const UNKNOWN = 0.55;
const KNOW_RATE = 0.04;
const FIRST_HALF_LIFE = 5;
const LENGTHENED = 1.7;
const LONGEST_HALF_LIFE = 200;
const COORDINATION = 0.45;
const RANGE = 0.2;
const COORDINATION_RATE = 0.015;
const MASSED = 0.6;
/** Half-life of speed once it is learnt, in days: 13 months (Tatel & Ackerman 2025). */
const MOVE_HALF_LIFE = 395;
/** The slowest move counts most: a power mean of the times with this exponent (assumed). */
const SLOWEST = 4;

const WIDEST = 12;
const KINDS = WIDEST * 8;
const BLACK = new Set([1, 3, 6, 8, 10]);
const HALF_STEPS: Readonly<Record<string, number>> = {
  '1P': 0,
  '2M': 2,
  '3m': 3,
  '3M': 4,
  '4P': 5,
  '4A': 6,
  '5d': 6,
  '5P': 7,
  '6m': 8,
  '6M': 9,
  '7d': 9,
  '7m': 10,
};

/** The kinds of move of one hand in an arpeggio, going up through one octave. */
function movesOf(hand: number, arpeggio: number): readonly number[] {
  const bottom = pitchClassOf(STARTING_NOTES[Math.floor(arpeggio / CHORD_COUNT)]!);
  const keys = CHORDS[arpeggio % CHORD_COUNT]!.intervals.map((name) => bottom + HALF_STEPS[name]!);
  const isBlack = keys.map((key) => BLACK.has(key % 12));
  const whites = isBlack.flatMap((black, i) => (black ? [] : [i]));
  // Right thumb on the first white key going up, left thumb on the last: the rule that teachers give.
  const thumb = (hand === 0 ? whites[0] : whites.at(-1)) ?? 0;
  return keys.map((key, i) => {
    const next = (i + 1) % keys.length;
    const wide = (next === 0 ? keys[0]! + 12 : keys[next]!) - key;
    const passes = hand === 0 ? next === thumb : i === thumb;
    return (
      hand * KINDS +
      (wide - 1) * 8 +
      (isBlack[i] ? 4 : 0) +
      (isBlack[next] ? 2 : 0) +
      (passes ? 1 : 0)
    );
  });
}

const MOVES = [0, 1].flatMap((hand) =>
  Array.from({ length: ARPEGGIOS }, (_, arpeggio) => movesOf(hand, arpeggio)),
);

const HANDS = 2 * ARPEGGIOS;
const MOVE = 0;
const MOVE_LAST = MOVE + 2 * KINDS;
const KNOWN = MOVE_LAST + 2 * KINDS;
const HALF_LIFE = KNOWN + HANDS;
const LAST = HALF_LIFE + HANDS;
const TODAY = LAST + HANDS;
const LONG = TODAY + HANDS;
const COORDINATED = LONG + 2;
const BOTH = COORDINATED + ARPEGGIOS;
const SIZE = BOTH + CHORD_COUNT;

export function componentsTruth(traits: Traits, random: Random): Truth {
  const state = new Float64Array(SIZE);
  const spread = Math.hypot(traits.ownSpread, traits.chordSpread);
  const moveEase = Float64Array.from(
    { length: 2 * KINDS },
    (_, kind) =>
      1.2 * spread * random.normal() -
      (kind % 2 === 1 ? 0.15 : 0) -
      (kind < KINDS ? 0 : traits.leftLag),
  );
  state.fill(FIRST_HALF_LIFE, HALF_LIFE, HALF_LIFE + HANDS);
  if (traits.isHalfWay) {
    for (let i = 0; i < 2 * KINDS; i++) state[MOVE + i] = 0.25 + 0.25 * random.share();
    for (let i = 0; i < HANDS; i++) {
      if (random.share() < 0.6) state[KNOWN + i] = 0.7;
      state[HALF_LIFE + i] = 60;
    }
  }

  const moveOf = (kind: number, day: number): number => {
    const last = state[MOVE_LAST + kind]!;
    const days = last === 0 ? 0 : day - last;
    return state[MOVE + kind]! * (days > 0 ? 2 ** (-days / MOVE_HALF_LIFE) : 1);
  };
  const knownOf = (at: number, day: number): number => {
    const last = state[LAST + at]!;
    const days = last === 0 ? 0 : day - last;
    return state[KNOWN + at]! * (days > 0 ? 2 ** (-days / state[HALF_LIFE + at]!) : 1);
  };

  const handLevel = (hand: number, arpeggio: number, day: number, long: boolean): number => {
    const at = hand * ARPEGGIOS + arpeggio;
    const moves = MOVES[at]!;
    let time = 0;
    for (const kind of moves) {
      time += 2 ** (-SLOWEST * (moveEase[kind]! + MOVE_GAIN * moveOf(kind, day)));
    }
    return (
      traits.start +
      0.35 -
      Math.log2(time / moves.length) / SLOWEST -
      UNKNOWN * (1 - knownOf(at, day)) -
      (long ? RANGE * (1 - state[LONG + hand]!) : 0)
    );
  };

  const approach = (at: number, by: number): void => {
    state[at]! += by * (1 - state[at]!);
  };

  const practiseHand = (hand: number, arpeggio: number, day: number, quality: number): void => {
    const at = hand * ARPEGGIOS + arpeggio;
    if (state[LAST + at]! < day) {
      const isSpaced = state[LAST + at]! > 0;
      state[KNOWN + at] = knownOf(at, day);
      state[TODAY + at] = 0;
      state[LAST + at] = day;
      if (isSpaced && quality > 0.5) {
        state[HALF_LIFE + at] = Math.min(LONGEST_HALF_LIFE, LENGTHENED * state[HALF_LIFE + at]!);
      }
    }
    const amount = (traits.rate * quality) / (1 + MASSED * state[TODAY + at]!);
    state[TODAY + at]! += 1;
    approach(KNOWN + at, KNOW_RATE * amount);
    for (const kind of MOVES[at]!) {
      state[MOVE + kind] = moveOf(kind, day);
      state[MOVE_LAST + kind] = day;
      approach(MOVE + kind, MOVE_RATE * amount);
    }
  };

  return {
    state,
    level(index, day) {
      const way = wayOf(index);
      const arpeggio = arpeggioOf(index);
      if (!usesLeft(way)) return handLevel(0, arpeggio, day, isLong(way));
      const left = handLevel(1, arpeggio, day, isLong(way));
      if (!usesRight(way)) return left;
      const right = handLevel(0, arpeggio, day, isLong(way));
      const coordinated =
        0.5 * state[COORDINATED + arpeggio]! + 0.5 * state[BOTH + (arpeggio % CHORD_COUNT)]!;
      return slower(right, left) - COORDINATION * (1 - coordinated);
    },
    practise(index, day, quality) {
      const way = wayOf(index);
      const arpeggio = arpeggioOf(index);
      const isBoth = usesRight(way) && usesLeft(way);
      const share = isBoth ? 0.85 * quality : quality;
      if (usesRight(way)) practiseHand(0, arpeggio, day, share);
      if (usesLeft(way)) practiseHand(1, arpeggio, day, share);
      if (isLong(way)) {
        if (usesRight(way)) approach(LONG, 0.001 * traits.rate * quality);
        if (usesLeft(way)) approach(LONG + 1, 0.001 * traits.rate * quality);
      }
      if (isBoth) {
        approach(COORDINATED + arpeggio, COORDINATION_RATE * traits.rate * quality);
        approach(BOTH + (arpeggio % CHORD_COUNT), 0.3 * COORDINATION_RATE * traits.rate * quality);
      }
    },
  };
}
