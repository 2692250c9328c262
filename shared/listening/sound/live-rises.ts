/** How much of each expected key begins to sound, moment by moment while the sound comes in: rises.ts without a future. */
import type { Recent } from './recent';
import { energiesIn, OVER, WINDOW } from './rises';
import { lengthAt } from './spectrum';

/** Half as many moments as afterwards: this must cost little. */
const HOPS_OVER = 4;
/**
 * The rise that counts as a whole note: the greatest of the key so far, but not less than this share of that of the keys
 * that rise most, as most keys have not been played yet; nor than so many times the quietest moment: of noise alone half as
 * much as that rises, of a note in it five times and more.
 */
const USUAL = 0.6;
const MOST_KEYS = 0.8;
const OVER_NOISE = 3;

export interface LiveRises {
  /** Seconds from one moment to the next. */
  readonly hop: number;
  /** Seconds from the beginning of the sound to the first moment. */
  readonly start: number;
  /** The rise of each key at the next moment, 0 to 1; null until enough of the sound is there. */
  next(): Float32Array | null;
  /** The piano turned out to be tuned otherwise. */
  retune(cents: number): void;
}

/** From the first sample that is held. `tuning` in cents. */
export function liveRisesOf(recent: Recent, keys: readonly number[], tuning: number): LiveRises {
  const { rate } = recent.sound;
  const window = lengthAt(rate, WINDOW);
  const hop = Math.round((window * OVER) / HOPS_OVER);
  let energiesAt = energiesIn(recent.sound, keys, tuning);
  const first = recent.first();
  /** Of the last moments, the oldest first. */
  const past: Float32Array[] = [];
  const greatest = new Float32Array(keys.length);
  let quietest = Infinity;
  let from = first;
  return {
    hop: hop / rate,
    retune: (cents) => {
      energiesAt = energiesIn(recent.sound, keys, cents);
    },
    start: (first + window / 2 + (HOPS_OVER / 2) * hop) / rate,
    next: () => {
      while (past.length <= HOPS_OVER) {
        if (from + window > recent.end()) return null;
        past.push(energiesAt(from - recent.first()).slice());
        from += hop;
      }
      const before = past.shift()!;
      const rises = past.at(-1)!.map((energy, k) => Math.max(0, energy - before[k]!));
      quietest = Math.min(quietest, meanOf(before));
      rises.forEach((rise, k) => {
        greatest[k] = Math.max(greatest[k]!, rise);
      });
      const usual = greatest.toSorted()[Math.floor(MOST_KEYS * greatest.length)]!;
      const least = Math.max(USUAL * usual, OVER_NOISE * quietest, 1e-9);
      return rises.map((rise, k) => Math.min(1, rise / Math.max(greatest[k]!, least)));
    },
  };
}

const meanOf = (values: Float32Array): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
