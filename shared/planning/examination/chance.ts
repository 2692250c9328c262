/** Chance by a seed: the same numbers every time, on every device. */

export interface Chance {
  /** Uniform, at least 0 and below 1. */
  readonly share: () => number;
  /** Standard normal. */
  readonly normal: () => number;
}

/** 2^32 / golden ratio: neighbouring seeds begin far apart. */
const SPREAD = 0x9e3779b1;

/** A 32-bit xorshift generator (Marsaglia 2003, triple 13, 17, 5); its state is never 0. */
export function chanceOf(seed: number): Chance {
  let state = Math.imul(seed, SPREAD) || 1;
  const share = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
  return {
    share,
    normal: () => Math.sqrt(-2 * Math.log(1 - share())) * Math.cos(2 * Math.PI * share()),
  };
}
