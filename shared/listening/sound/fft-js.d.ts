/** What is used of fft.js, which has no types of its own. */
declare module 'fft.js' {
  export default class FFT {
    /** `size` is a power of two. */
    constructor(size: number);
    /** Fills the first half of `out` (real and imaginary parts in turn, 2 * size long) from `size` real values. */
    realTransform(out: Float64Array, data: Float64Array): void;
  }
}
