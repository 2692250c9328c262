/**
 * Where in a sound something begins, whatever it is: spectral flux with a maximum over neighbouring bands of the past
 * (Boeck & Widmer 2013, DAFx: "Maximum filter vibrato suppression for onset detection"), in bands of a semitone.
 */
import { type Sound, spectraOf } from './spectrum';

export interface Candidate {
  /** Seconds. */
  readonly at: number;
  /** Mean rise over the bands, in nepers above the noise. */
  readonly strength: number;
}

const WINDOW = 1024;
const HOP = 128;
const BACK = 3;
const LOWEST = 80;
const HIGHEST = 10_000;
const BANDS_OF_OCTAVE = 12;
/** Share of the moments that are silent enough to tell the noise, and how far below the loudest it may be taken. */
const QUIET = 0.08;
const DEEPEST = 0.001;
/** Noise times this is where loudness begins to count as a logarithm. */
const ABOVE_NOISE = 4;
const LEAST = 0.03;
const ABOVE_MEAN = 1.2;
/** Seconds: about a moment for its mean, and the nearest that two onsets are told apart. */
const AROUND = 0.1;
const APART = 0.014;
/** Seconds from an onset to the middle of the window in which it rises fastest; measured on rendered notes. */
const LATE = 0.004;

/** In the order of their times. */
export function candidatesOf(sound: Sound): readonly Candidate[] {
  const flux = fluxOf(sound);
  const step = HOP / sound.rate;
  const means = localMeans(flux, Math.round(AROUND / step));
  const near = Math.round(APART / step);
  const found: Candidate[] = [];
  for (let i = 1; i + 1 < flux.length; i++) {
    const value = flux[i]!;
    if (value < Math.max(LEAST, ABOVE_MEAN * means[i]!)) continue;
    if (!isHighest(flux, i, near)) continue;
    const [before, after] = [flux[i - 1]!, flux[i + 1]!];
    const bend = before - 2 * value + after;
    const off = bend === 0 ? 0 : (0.5 * (before - after)) / bend;
    const middle = ((i + off) * HOP + WINDOW / 2) / sound.rate;
    found.push({ at: middle - LATE, strength: value });
  }
  return found;
}

const isHighest = (values: Float32Array, at: number, near: number): boolean => {
  for (let i = Math.max(0, at - near); i <= Math.min(values.length - 1, at + near); i++) {
    const [there, here] = [values[i]!, values[at]!];
    if (there > here || (there === here && i < at)) return false;
  }
  return true;
};

/** Means of the values around each, none counted with more than twice the mean of all. */
function localMeans(values: Float32Array, around: number): Float32Array {
  const most = (2 * values.reduce((sum, value) => sum + value, 0)) / Math.max(1, values.length);
  const sums = new Float64Array(values.length + 1);
  for (let i = 0; i < values.length; i++) sums[i + 1] = sums[i]! + Math.min(values[i]!, most);
  return Float32Array.from(values, (_, i) => {
    const [from, to] = [Math.max(0, i - around), Math.min(values.length, i + around + 1)];
    return (sums[to]! - sums[from]!) / (to - from);
  });
}

function fluxOf(sound: Sound): Float32Array {
  const { rate, samples } = sound;
  const highest = Math.min(HIGHEST, 0.45 * rate);
  // Up to the end of the band in which the highest lies.
  const spectra = spectraOf(sound, WINDOW, 2 ** (1 / BANDS_OF_OCTAVE) * highest);
  const edges = edgesOf(spectra.spacing, highest);
  const bands = edges.length - 1;
  const moments = Math.max(0, Math.floor((samples.length - WINDOW) / HOP) + 1);
  const levels = new Float32Array(moments * bands);
  for (let i = 0; i < moments; i++) {
    const sizes = spectra.at(i * HOP);
    for (let band = 0; band < bands; band++) {
      let sum = 0;
      for (let k = edges[band]!; k < edges[band + 1]!; k++) sum += sizes[k]! ** 2;
      levels[i * bands + band] = Math.sqrt(sum);
    }
  }
  aboveNoise(levels, bands);
  return risesOf(levels, bands);
}

/** Places in the spectrum at which bands begin; low bands that would have no place of their own are left out. */
function edgesOf(spacing: number, highest: number): readonly number[] {
  const edges: number[] = [];
  for (let i = 0; ; i++) {
    const frequency = LOWEST * 2 ** (i / BANDS_OF_OCTAVE);
    const place = Math.round(frequency / spacing);
    if (place !== edges.at(-1)) edges.push(place);
    if (frequency > highest) return edges;
  }
}

function aboveNoise(levels: Float32Array, bands: number): void {
  const moments = levels.length / bands;
  const one = new Float32Array(moments);
  for (let band = 0; band < bands; band++) {
    for (let i = 0; i < moments; i++) one[i] = levels[i * bands + band]!;
    one.sort();
    const peak = one[moments - 1] ?? 0;
    const noise = Math.max(one[Math.floor(QUIET * moments)] ?? 0, DEEPEST * peak, 1e-9);
    for (let i = band; i < levels.length; i += bands) {
      levels[i] = Math.log1p(levels[i]! / (ABOVE_NOISE * noise));
    }
  }
}

function risesOf(levels: Float32Array, bands: number): Float32Array {
  const moments = levels.length / bands;
  const rises = new Float32Array(moments);
  for (let i = BACK; i < moments; i++) {
    const [now, past] = [i * bands, (i - BACK) * bands];
    let sum = 0;
    for (let band = 0; band < bands; band++) {
      const here = levels[past + band]!;
      const below = band > 0 ? levels[past + band - 1]! : here;
      const above = band + 1 < bands ? levels[past + band + 1]! : here;
      const rise = levels[now + band]! - Math.max(here, below, above);
      if (rise > 0) sum += rise;
    }
    rises[i] = sum / bands;
  }
  return rises;
}
