/** Chance that comes out the same every time: the invented history must not change between two looks at it. */

export interface Random {
  /** Uniform, at least 0 and below 1. */
  readonly share: () => number;
  /** Standard normal. */
  readonly normal: () => number;
  /** `count` random bytes. */
  readonly bytes: (count: number) => Uint8Array;
}

/** A 32-bit xorshift generator (Marsaglia 2003, triple 13, 17, 5); good enough for invention, not for secrets. */
export function seededRandom(seed: number): Random {
  let state = seed | 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return state >>> 0;
  };
  const share = (): number => next() / 2 ** 32;
  return {
    share,
    normal: () => Math.sqrt(-2 * Math.log(1 - share())) * Math.cos(2 * Math.PI * share()),
    bytes: (count) => Uint8Array.from({ length: count }, () => next() >>> 24),
  };
}
