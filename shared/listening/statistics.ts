/** Sums over small lists of numbers. An empty list has no mean: null. */

export const mean = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;

export function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** Sample standard deviation; `taken` is how many numbers were estimated from the same values before. */
export function deviation(values: readonly number[], taken = 1): number | null {
  if (values.length <= taken) return null;
  const middle = mean(values)!;
  const squares = values.reduce((sum, value) => sum + (value - middle) ** 2, 0);
  return Math.sqrt(squares / (values.length - taken));
}

/** A normal sample's standard deviation in units of its median absolute deviation. */
const NORMAL = 1.4826;

/** Standard deviation that a few wild values do not move: from the median of the distances to `middle`. */
export const robustDeviation = (values: readonly number[], middle: number): number =>
  NORMAL * (median(values.map((value) => Math.abs(value - middle))) ?? 0);

export interface Line {
  readonly slope: number;
  readonly at: (x: number) => number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Least squares. One point has no slope: it is flat. */
export function leastSquares(points: readonly Point[]): Line {
  const x0 = mean(points.map(({ x }) => x)) ?? 0;
  const y0 = mean(points.map(({ y }) => y)) ?? 0;
  const spread = points.reduce((sum, { x }) => sum + (x - x0) ** 2, 0);
  const product = points.reduce((sum, { x, y }) => sum + (x - x0) * (y - y0), 0);
  const slope = spread === 0 ? 0 : product / spread;
  return { slope, at: (x) => y0 + slope * (x - x0) };
}

/** Theil (1950) and Sen (1968): the median of the slopes between all pairs, which wild points do not move. */
export function medianLine(points: readonly Point[]): Line {
  const slopes = points.flatMap((a, i) =>
    points.slice(i + 1).flatMap((b) => (a.x === b.x ? [] : [(b.y - a.y) / (b.x - a.x)])),
  );
  const slope = median(slopes) ?? 0;
  const start = median(points.map(({ x, y }) => y - slope * x)) ?? 0;
  return { slope, at: (x) => start + slope * x };
}
