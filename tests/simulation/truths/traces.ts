/**
 * Family 2, decaying traces. Each run of an item leaves a trace that fades in days; what has faded has in part become a
 * slower trace, which in part becomes a lasting one. Tempo follows the sum by a power law of practice. Ways of playing
 * the same arpeggio support those above them; other arpeggios help only by a little, through the way of playing.
 */
import type { Random } from '../../../src/demo/random';
import type { Traits, Truth } from '../learner';
import {
  ARPEGGIOS,
  arpeggioOf,
  CHORD_COUNT,
  CONTRARY,
  ITEMS,
  LEFT_2,
  LEFT_4,
  RIGHT_2,
  RIGHT_4,
  TOGETHER_2,
  TOGETHER_4,
  wayOf,
} from './shape';

/** Three exponentials stand for a power law of forgetting (form: Rubin, Hinton & Wenzel 1999); days, the last anchored
 * at 13 months of half-life (Tatel & Ackerman 2025), the others assumed. */
const FAST = 2.5;
const SLOW = 40;
const LASTING = 570;
/** What of a faded trace has become a slower one (assumed). */
const KEPT = 0.8;
/** Power law of practice: exponent 0.2 to 0.4 (Newell & Rosenbloom 1981), and the runs after which it bends (assumed). */
const POWER = 0.36;
const BEND = 6.5;
/** A fresh trace leaves less room for the next (assumed): massing. */
const ROOM = 0.6;
/** What ways of playing lack before practice (assumed), in the order of the deck. */
const WAY_START = [0, 0, -0.3, -0.5, -0.6, -0.15, -0.15] as const;
/** Support from the ways below (assumed). */
const FROM_HANDS = 0.5;
const FROM_SHORT = 0.45;
/** A way of playing as a whole: octaves at most, and runs to half of it (assumed). */
const WAY_GAIN = 0.25;
const WAY_RUNS = 400;

const FAST_AT = 0;
const SLOW_AT = ITEMS;
const LASTING_AT = 2 * ITEMS;
const LAST_AT = 3 * ITEMS;
const WAY_AT = 4 * ITEMS;

const itemAt = (way: number, arpeggio: number): number => way * ARPEGGIOS + arpeggio;

export function tracesTruth(traits: Traits, random: Random): Truth {
  const state = new Float64Array(WAY_AT + WAY_START.length);
  const ease = new Float64Array(ITEMS);
  const chordEase = Array.from({ length: CHORD_COUNT }, () => traits.chordSpread * random.normal());
  const handEase = Array.from(
    { length: 2 * ARPEGGIOS },
    (_, i) => traits.ownSpread * random.normal() - (i < ARPEGGIOS ? 0 : traits.leftLag),
  );
  for (let index = 0; index < ITEMS; index++) {
    const arpeggio = arpeggioOf(index);
    const way = wayOf(index);
    const [right, left] = [handEase[arpeggio]!, handEase[ARPEGGIOS + arpeggio]!];
    const own =
      way === RIGHT_2 || way === RIGHT_4
        ? right
        : way === LEFT_2 || way === LEFT_4
          ? left
          : Math.min(right, left) + 0.05;
    ease[index] = WAY_START[way]! + chordEase[index % CHORD_COUNT]! + own;
    if (traits.isHalfWay && way <= LEFT_2 && random.share() < 0.6) {
      state[LASTING_AT + index] = 9;
    }
  }

  /** The strength of an item's own traces. */
  const strength = (index: number, day: number): number => {
    const last = state[LAST_AT + index]!;
    const days = last === 0 ? 0 : Math.max(0, day - last);
    const fast = state[FAST_AT + index]!;
    const slow = state[SLOW_AT + index]!;
    if (days === 0) return 0.5 * fast + slow + state[LASTING_AT + index]!;
    const fastKept = fast * Math.exp(-days / FAST);
    const slowKept = (slow + KEPT * (fast - fastKept)) * Math.exp(-days / SLOW);
    const lasting =
      state[LASTING_AT + index]! * Math.exp(-days / LASTING) +
      KEPT * (slow - slowKept < 0 ? 0 : slow - slowKept);
    return 0.5 * fastKept + slowKept + lasting;
  };

  const supported = (way: number, arpeggio: number, day: number): number => {
    const own = strength(itemAt(way, arpeggio), day);
    switch (way) {
      case TOGETHER_2:
        return (
          own +
          2 *
            FROM_HANDS *
            Math.min(
              strength(itemAt(RIGHT_2, arpeggio), day),
              strength(itemAt(LEFT_2, arpeggio), day),
            )
        );
      case TOGETHER_4:
        return (
          own +
          FROM_SHORT * supported(TOGETHER_2, arpeggio, day) +
          FROM_HANDS *
            Math.min(
              strength(itemAt(RIGHT_4, arpeggio), day),
              strength(itemAt(LEFT_4, arpeggio), day),
            )
        );
      case CONTRARY:
        return own + FROM_SHORT * strength(itemAt(TOGETHER_4, arpeggio), day);
      case RIGHT_4:
        return own + FROM_SHORT * strength(itemAt(RIGHT_2, arpeggio), day);
      case LEFT_4:
        return own + FROM_SHORT * strength(itemAt(LEFT_2, arpeggio), day);
      default:
        return own;
    }
  };

  return {
    state,
    level(index, day) {
      const way = wayOf(index);
      const wayRuns = state[WAY_AT + way]!;
      return (
        traits.start +
        ease[index]! +
        POWER * Math.log2(1 + supported(way, arpeggioOf(index), day) / BEND) +
        (WAY_GAIN * wayRuns) / (wayRuns + WAY_RUNS)
      );
    },
    practise(index, day, quality) {
      const last = state[LAST_AT + index]!;
      if (last > 0 && day > last) {
        const days = day - last;
        const fast = state[FAST_AT + index]!;
        const fastKept = fast * Math.exp(-days / FAST);
        const slow = state[SLOW_AT + index]! + KEPT * (fast - fastKept);
        const slowKept = slow * Math.exp(-days / SLOW);
        state[FAST_AT + index] = fastKept;
        state[SLOW_AT + index] = slowKept;
        state[LASTING_AT + index] =
          state[LASTING_AT + index]! * Math.exp(-days / LASTING) + KEPT * (slow - slowKept);
      }
      state[LAST_AT + index] = day;
      const room = 1 / (1 + ROOM * state[FAST_AT + index]!);
      state[FAST_AT + index]! += traits.rate * quality * room;
      state[WAY_AT + wayOf(index)]! += traits.rate * quality;
    },
  };
}
