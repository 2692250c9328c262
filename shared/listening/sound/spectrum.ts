/** The door to the library for spectra. */
// oxlint-disable-next-line typescript/triple-slash-reference -- else only shared/ knows the types of the library
/// <reference path="./fft-js.d.ts" />
import FFT from 'fft.js';

/** One channel of sound: samples from -1 to 1, `rate` of them a second. */
export interface Sound {
  readonly samples: Float32Array;
  readonly rate: number;
}

/** As many samples at other rates as `samples` last at 44.1 or 48 kHz: a power of two stays one, as no padding is quickest. */
export const lengthAt = (rate: number, samples: number): number =>
  samples * 2 ** Math.round(Math.log2(rate / 46_000));

export interface Spectra {
  /** Hertz from one value of a spectrum to the next. */
  readonly spacing: number;
  /** How many values a spectrum has. */
  readonly size: number;
  /** Sizes of the partial tones from the sample `from` on (a sine of size 1 gives 0.5); the next call overwrites it. */
  at(from: number): Float32Array;
}

/** Made once for each size, as its tables take longer than many spectra. */
const transforms = new Map<number, FFT>();
function transformOf(size: number): FFT {
  const made = transforms.get(size) ?? new FFT(size);
  transforms.set(size, made);
  return made;
}

/**
 * Spectra of pieces of a sound of `length` samples, each under a Hann window, up to the `highest` frequency that is looked
 * at, in Hertz. Outside of the sound is silence.
 */
export function spectraOf({ samples, rate }: Sound, length: number, highest = rate / 2): Spectra {
  const size = 2 ** Math.ceil(Math.log2(length));
  const fft = transformOf(size);
  const hann = Float64Array.from(
    { length },
    (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / length),
  );
  const piece = new Float64Array(size);
  const complex = new Float64Array(2 * size);
  const sizes = new Float32Array(Math.min(size / 2, Math.ceil((highest * size) / rate) + 2));
  return {
    spacing: rate / size,
    size: sizes.length,
    at: (from) => {
      const start = Math.round(from);
      // Inside of the sound without a look at each sample, which takes longer than the sum.
      const isInside = start >= 0 && start + length <= samples.length;
      if (isInside) for (let i = 0; i < length; i++) piece[i] = hann[i]! * samples[start + i]!;
      else for (let i = 0; i < length; i++) piece[i] = hann[i]! * (samples[start + i] ?? 0);
      fft.realTransform(complex, piece);
      for (let i = 0; i < sizes.length; i++) {
        const [real, imaginary] = [complex[2 * i]!, complex[2 * i + 1]!];
        // Not Math.hypot, which is many times slower.
        sizes[i] = (2 * Math.sqrt(real * real + imaginary * imaginary)) / length;
      }
      return sizes;
    },
  };
}
