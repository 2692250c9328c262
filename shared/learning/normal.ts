/** The standard normal distribution. */

const ROOT_2PI = Math.sqrt(2 * Math.PI);

export const density = (z: number): number => Math.exp(-0.5 * z * z) / ROOT_2PI;

/**
 * Cumulative probability, to about 1e-15: Hart's rational approximation (1968) in the form given by G. West, "Better
 * approximations to cumulative normal functions", Wilmott 2005. Coefficients from memory, checked against published
 * tables in tests/reference/normal.test.ts.
 */
export function cumulative(z: number): number {
  const x = Math.abs(z);
  if (x > 37) return z > 0 ? 1 : 0;
  const tail = upperTail(x, Math.exp(-0.5 * x * x));
  return z > 0 ? 1 - tail : tail;
}

function upperTail(x: number, e: number): number {
  if (x >= 7.07106781186547) {
    return e / (x + 1 / (x + 2 / (x + 3 / (x + 4 / (x + 0.65))))) / 2.506628274631;
  }
  const numerator =
    ((((((0.0352624965998911 * x + 0.700383064443688) * x + 6.37396220353165) * x +
      33.912866078383) *
      x +
      112.079291497871) *
      x +
      221.213596169931) *
      x +
      220.206867912376) *
    e;
  const denominator =
    ((((((0.0883883476483184 * x + 1.75566716318264) * x + 16.064177579207) * x +
      86.7807322029461) *
      x +
      296.564248779674) *
      x +
      637.333633378831) *
      x +
      793.826512519948) *
      x +
    440.413735824752;
  return numerator / denominator;
}
