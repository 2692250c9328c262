/** What a rating tells: of the level, of how much this student's runs spread, and of how the levels of fluency are used. */
import type { Fluency } from '../log/events';
import type { Learner } from './learner';
import { cumulative, density } from './normal';
import { STRAY } from './prediction';

/** A student's own spread is learnt: as if so many runs had shown the one above, and between these limits. */
const NOISE_RUNS = 100;
const LOG_NOISE_LIMITS = [-2, -0.5] as const;
/** What one rating tells of the logarithm of the spread, in units of its own variance. */
const NOISE_TOLD = 0.8;
/** No rating tells more than so much of the spread, as runs that are far off are commoner than in a normal distribution. */
const MOST_TOLD = 1.7;
/** Chance of each level of fluency in a stray run. */
const STRAY_LEVELS = [1 / 6, 1 / 6, 1 / 6, 1 / 4, 1 / 4] as const;
/** No rating is taken for stray altogether, or a wrong estimate could never be put right. */
const LEAST_TRUST = 0.25;
/** A student's own cuts are learnt, as if so many runs had shown those above, and between these limits. */
const CUT_RUNS = 60;
const LOWEST_CUTS = [-Infinity, -1.2, -0.7, 0, 0.2, Infinity] as const;
const HIGHEST_CUTS = [-Infinity, -0.75, -0.2, 0, 0.9, Infinity] as const;
/** What one rating tells of the cuts beside it, in units of its own precision. */
const CUT_TOLD = 0.5;

/**
 * What a rating says: how far it moves the estimate, by how much it sharpens it, whether runs spread less, and where the
 * cuts below and above it should be.
 */
interface Told {
  shift: number;
  sharpening: number;
  narrowing: number;
  lowerCut: number;
  upperCut: number;
}

/** Written by each rating anew, as a replay has a hundred thousand of them. */
export const told: Told = { shift: 0, sharpening: 0, narrowing: 0, lowerCut: 0, upperCut: 0 };

/**
 * Moments of the normal between two cuts, mixed with stray runs: the more a rating surprises, the likelier it is that
 * it says nothing.
 */
export function listen(
  cuts: ArrayLike<number>,
  fluency: Fluency,
  distance: number,
  spread: number,
): void {
  const lower = (cuts[fluency]! - distance) / spread;
  const upper = (cuts[fluency + 1]! - distance) / spread;
  const mass = cumulative(upper) - cumulative(lower);
  if (mass < 1e-12) {
    told.shift = LEAST_TRUST * (lower > 0 ? 4 : -4);
    told.sharpening = told.narrowing = told.lowerCut = told.upperCut = 0;
    return;
  }
  const atLower = density(lower);
  const atUpper = density(upper);
  const shift = (atLower - atUpper) / mass;
  const curve =
    ((Number.isFinite(upper) ? upper * atUpper : 0) -
      (Number.isFinite(lower) ? lower * atLower : 0)) /
    mass;
  const meant = (1 - STRAY) * mass;
  const trust = Math.max(LEAST_TRUST, meant / (meant + STRAY * STRAY_LEVELS[fluency]));
  const sharpening = trust * (shift * shift + curve) - trust * (1 - trust) * shift * shift;
  told.shift = trust * Math.min(4, Math.max(-4, shift));
  told.sharpening = Math.min(0.98, Math.max(0, sharpening));
  told.narrowing = trust * Math.min(MOST_TOLD, Math.max(-MOST_TOLD, curve));
  told.lowerCut = -trust * Math.min(3, atLower / mass);
  told.upperCut = trust * Math.min(3, atUpper / mass);
}

/**
 * Moves what is known of the student's own ratings by steps of maximum likelihood: how much runs spread, and where each
 * level of fluency begins. `share` is the part of the spread that the run itself has.
 */
export function learnRating(
  { noise, cuts }: Learner,
  { fluency, weight }: { readonly fluency: Fluency; readonly weight: number },
  spread: number,
  share: number,
): void {
  const runs = noise[1]!;
  const [narrowest, widest] = LOG_NOISE_LIMITS;
  const narrower = (weight * told.narrowing * share) / (NOISE_TOLD * (NOISE_RUNS + runs));
  noise[0] = Math.min(widest, Math.max(narrowest, noise[0]! - narrower));
  noise[1] = runs + weight;
  const step = (weight * spread) / (CUT_TOLD * (CUT_RUNS + runs));
  moveCut(cuts, fluency, step * told.lowerCut);
  moveCut(cuts, fluency + 1, step * told.upperCut);
}

function moveCut(cuts: Float64Array, cut: number, by: number): void {
  cuts[cut] = Math.min(HIGHEST_CUTS[cut]!, Math.max(LOWEST_CUTS[cut]!, cuts[cut]! + by));
}
