/** How many of some items come out even, where each has a chance of its own and they do not hang together. */

/**
 * Probability of each number, 0 to all (the Poisson binomial distribution, by convolution), of all items but one if a
 * place is named. In plain loops, as a forecast asks for it many thousand times.
 */
export function tallyOf(chances: readonly number[], without = -1): Float64Array {
  const tally = new Float64Array(chances.length + 1);
  tally[0] = 1;
  for (let i = 0, length = 0; i < chances.length; i++) {
    if (i === without) continue;
    const chance = chances[i]!;
    length += 1;
    for (let count = length; count > 0; count--) {
      tally[count] = tally[count]! * (1 - chance) + tally[count - 1]! * chance;
    }
    tally[0]! *= 1 - chance;
  }
  return tally;
}

/** Probability of at least so many; all of them are enough if fewer are asked than must be even. */
export const passChance = (chances: readonly number[], toPass: number): number =>
  tallyOf(chances)
    .slice(Math.min(toPass, chances.length))
    .reduce((sum, one) => sum + one, 0);

/** Probability that it hangs on one of them: one less than needed of the others are even. */
export const pivotChance = (chances: readonly number[], place: number, toPass: number): number =>
  tallyOf(chances, place)[Math.min(toPass, chances.length) - 1]!;
