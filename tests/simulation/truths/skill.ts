/**
 * Family 1, skill with transfer. Each hand has a skill on each arpeggio, made of its own, of the chord's shape, of the
 * starting note and of the hand; hands together are as good as the slower hand less what coordination lacks. New skill
 * halves in days and lasts longer with each spaced success. Part of a gain comes overnight, less so after a near twin.
 */
import type { Random } from '../../../src/demo/random';
import type { Traits, Truth } from '../learner';
import {
  ARPEGGIOS,
  arpeggioOf,
  CHORD_COUNT,
  CONTRARY,
  isLong,
  NOTE_COUNT,
  slower,
  usesLeft,
  usesRight,
  wayOf,
} from './shape';

/** Octaves of tempo between nothing learnt and the personal ceiling (assumed), and what each part has of it. */
const GAIN = 1.35;
const PARTS = { own: 0.55, shape: 0.2, key: 0.08, hand: 0.17 };
/** Exponential approach, 0.01 to 0.05 a run (Heathcote et al. 2000). */
const RATE = 0.019;
/** Transfer: same shape, other note 0.2 to 0.5 in the long run; other hand 0.1 to 0.2 (5.3). */
const SHAPE_RATE = 0.006;
const KEY_RATE = 0.005;
const HAND_RATE = 0.001;
const OTHER_HAND = 0.15;
/** What hands together and four octaves lack at first (assumed). */
const COORDINATION = 0.4;
const RANGE = 0.3;
/** Half-life of new skill 3 to 10 days, 1.5 to 2.5 times longer by spaced success; 13 months at most (5.3). */
const FIRST_HALF_LIFE = 6;
const LENGTHENED = 1.8;
const LONGEST_HALF_LIFE = 395;
/** Later runs of an item on a day teach less (assumed); 0.4 of a gain comes overnight, halved by a near twin (5.3). */
const MASSED = 0.5;
const OVERNIGHT = 0.4;
/** Skill under which an arpeggio is fresh, and so disturbed by a twin (assumed). */
const FRESH = 0.25;

// Parts of the state: by hand (right, left) and arpeggio, unless said otherwise.
const HANDS = 2 * ARPEGGIOS;
const OWN = 0;
const HALF_LIFE = OWN + HANDS;
const LAST = HALF_LIFE + HANDS;
const TODAY = LAST + HANDS;
const PENDING = TODAY + HANDS;
const LONG = PENDING + HANDS;
/** By arpeggio. */
const COORDINATED = LONG + HANDS;
const OPPOSED = COORDINATED + ARPEGGIOS;
/** By hand and chord, hand and note, hand; one. */
const SHAPE = OPPOSED + ARPEGGIOS;
const KEY = SHAPE + 2 * CHORD_COUNT;
const HAND = KEY + 2 * NOTE_COUNT;
const BOTH = HAND + 2;
const SIZE = BOTH + 1;

export function skillTruth(traits: Traits, random: Random): Truth {
  const state = new Float64Array(SIZE);
  const ease = new Float64Array(HANDS);
  const chordEase = Array.from({ length: CHORD_COUNT }, () => traits.chordSpread * random.normal());
  for (let i = 0; i < HANDS; i++) {
    const lag = i < ARPEGGIOS ? 0 : traits.leftLag;
    ease[i] = chordEase[i % CHORD_COUNT]! + traits.ownSpread * random.normal() - lag;
    state[HALF_LIFE + i] = FIRST_HALF_LIFE;
    if (traits.isHalfWay && random.share() < 0.6) {
      state[OWN + i] = 0.45;
      state[HALF_LIFE + i] = 120;
    }
  }
  if (traits.isHalfWay) {
    state.fill(0.4, SHAPE, BOTH + 1);
  }
  const rate = RATE * traits.rate;

  const keptOf = (at: number, day: number): number => {
    const last = state[LAST + at]!;
    if (last === 0 || day <= last) return state[OWN + at]!;
    const own = state[OWN + at]! + state[PENDING + at]!;
    return own * 2 ** (-(day - last) / state[HALF_LIFE + at]!);
  };

  const handLevel = (hand: number, arpeggio: number, day: number): number => {
    const at = hand * ARPEGGIOS + arpeggio;
    const chord = arpeggio % CHORD_COUNT;
    const note = Math.floor(arpeggio / CHORD_COUNT);
    const learnt =
      PARTS.own * keptOf(at, day) +
      PARTS.shape * state[SHAPE + hand * CHORD_COUNT + chord]! +
      PARTS.key * state[KEY + hand * NOTE_COUNT + note]! +
      PARTS.hand * state[HAND + hand]!;
    return traits.start + ease[at]! + GAIN * learnt;
  };

  const longLoss = (hand: number, arpeggio: number): number =>
    RANGE * (1 - state[LONG + hand * ARPEGGIOS + arpeggio]!);

  const approach = (at: number, by: number): void => {
    state[at]! += by * (1 - state[at]!);
  };

  const disturbTwins = (hand: number, arpeggio: number, day: number): void => {
    for (const steps of [-2, -1, 1, 2]) {
      const twin = arpeggio + steps * CHORD_COUNT;
      if (twin < 0 || twin >= ARPEGGIOS) continue;
      const at = hand * ARPEGGIOS + twin;
      if (state[LAST + at] === day && state[OWN + at]! < FRESH) state[PENDING + at]! *= 0.5;
    }
  };

  const practiseHand = (hand: number, arpeggio: number, day: number, quality: number): void => {
    const at = hand * ARPEGGIOS + arpeggio;
    const other = (1 - hand) * ARPEGGIOS + arpeggio;
    if (state[LAST + at]! < day) {
      const isSpaced = state[LAST + at]! > 0;
      state[OWN + at] = keptOf(at, day);
      state[PENDING + at] = 0;
      state[TODAY + at] = 0;
      state[LAST + at] = day;
      if (isSpaced && quality > 0.5) {
        state[HALF_LIFE + at] = Math.min(LONGEST_HALF_LIFE, LENGTHENED * state[HALF_LIFE + at]!);
      }
    }
    const amount = (rate * quality) / (1 + MASSED * state[TODAY + at]!);
    state[TODAY + at]! += 1;
    const gain = amount * Math.max(0, 1 - state[OWN + at]! - state[PENDING + at]!);
    state[OWN + at]! += (1 - OVERNIGHT) * gain;
    state[PENDING + at]! += OVERNIGHT * gain;
    approach(OWN + other, OTHER_HAND * amount);
    const share = amount / RATE;
    const chord = arpeggio % CHORD_COUNT;
    approach(SHAPE + hand * CHORD_COUNT + chord, SHAPE_RATE * share);
    approach(SHAPE + (1 - hand) * CHORD_COUNT + chord, OTHER_HAND * SHAPE_RATE * share);
    approach(KEY + hand * NOTE_COUNT + Math.floor(arpeggio / CHORD_COUNT), KEY_RATE * share);
    approach(HAND + hand, HAND_RATE * share);
    disturbTwins(hand, arpeggio, day);
  };

  return {
    state,
    level(index, day) {
      const way = wayOf(index);
      const arpeggio = arpeggioOf(index);
      const right = usesRight(way)
        ? handLevel(0, arpeggio, day) - (isLong(way) ? longLoss(0, arpeggio) : 0)
        : 0;
      if (!usesLeft(way)) return right;
      const left = handLevel(1, arpeggio, day) - (isLong(way) ? longLoss(1, arpeggio) : 0);
      if (!usesRight(way)) return left;
      const coordinated =
        0.6 * state[(way === CONTRARY ? OPPOSED : COORDINATED) + arpeggio]! + 0.4 * state[BOTH]!;
      return slower(right, left) - COORDINATION * (1 - coordinated);
    },
    practise(index, day, quality) {
      const way = wayOf(index);
      const arpeggio = arpeggioOf(index);
      const isBoth = usesRight(way) && usesLeft(way);
      const share = isBoth ? 0.8 * quality : quality;
      if (usesRight(way)) practiseHand(0, arpeggio, day, share);
      if (usesLeft(way)) practiseHand(1, arpeggio, day, share);
      if (isLong(way)) {
        if (usesRight(way)) approach(LONG + arpeggio, 1.5 * rate * quality);
        if (usesLeft(way)) approach(LONG + ARPEGGIOS + arpeggio, 1.5 * rate * quality);
      }
      if (isBoth) {
        approach((way === CONTRARY ? OPPOSED : COORDINATED) + arpeggio, 1.5 * rate * quality);
        approach(BOTH, 0.1 * rate * quality);
      }
    },
  };
}
