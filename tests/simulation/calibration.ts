/** How far forecasts can be trusted: Brier score and expected calibration error (Murphy 1973; ten equal bins). */

const BINS = 10;

export class Calibration {
  #squares = 0;
  #count = 0;
  readonly #expected = new Float64Array(BINS);
  readonly #happened = new Float64Array(BINS);
  readonly #counts = new Float64Array(BINS);

  /** A forecast, 0 to 1, and what happened: 0 or 1, or the true probability of 1. */
  add(expected: number, happened: number): void {
    const bin = Math.min(BINS - 1, Math.floor(BINS * expected));
    // With a true probability in place of an outcome this is what the mean over outcomes comes to.
    this.#squares += (expected - happened) ** 2 + happened * (1 - happened);
    this.#count += 1;
    this.#expected[bin]! += expected;
    this.#happened[bin]! += happened;
    this.#counts[bin]! += 1;
  }

  /** Counts, sums and squares, to be sent from a worker. */
  get sums(): readonly number[] {
    return [this.#squares, this.#count, ...this.#expected, ...this.#happened, ...this.#counts];
  }

  merge(sums: readonly number[]): void {
    this.#squares += sums[0]!;
    this.#count += sums[1]!;
    for (let i = 0; i < BINS; i++) {
      this.#expected[i]! += sums[2 + i]!;
      this.#happened[i]! += sums[2 + BINS + i]!;
      this.#counts[i]! += sums[2 + 2 * BINS + i]!;
    }
  }

  get count(): number {
    return this.#count;
  }

  get brier(): number {
    return this.#squares / this.#count;
  }

  get error(): number {
    let sum = 0;
    for (let i = 0; i < BINS; i++) sum += Math.abs(this.#expected[i]! - this.#happened[i]!);
    return sum / this.#count;
  }

  /** By bin: mean forecast, share that happened, number of forecasts. */
  get bins(): readonly (readonly [number, number, number])[] {
    return Array.from(this.#counts, (count, i) => [
      this.#expected[i]! / count,
      this.#happened[i]! / count,
      count,
    ]);
  }
}
