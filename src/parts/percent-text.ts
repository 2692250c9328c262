/** A chance as a whole number of per cent. Nothing that is estimated is certain, so never 0 and never 100. */
export const percent = (chance: number): number =>
  Math.min(99, Math.max(1, Math.round(100 * chance)));
