/** How much of a key begins to sound when: the rise of its partial tones, for every key that is expected. */
import type { ExpectedStep } from '../expected';
import { partialsOf } from './piano';
import { lengthAt, type Sound, spectraOf } from './spectrum';

/** Samples of sound in a spectrum, and the share of that over which a rise is taken. */
export const WINDOW = 4096;
export const OVER = 0.75;
const HOPS_OVER = 8;
const PARTIALS = 8;
const HIGHEST = 8000;
/** The rise that counts as a whole note: nearly the greatest of the key, but not below half of what keys usually have. */
const GREAT = 0.995;
const USUAL = 0.5;

export interface Rises {
  /** Seconds from one value to the next, and the time of the first. */
  readonly hop: number;
  readonly start: number;
  readonly length: number;
  /** From 0 (nothing) to 1 (a whole note), for each step: the mean of its notes. */
  readonly ofStep: (step: number) => Float32Array;
}

/** `tuning` in cents. */
export function risesOf(sound: Sound, steps: readonly ExpectedStep[], tuning: number): Rises {
  const { rate, samples } = sound;
  const window = lengthAt(rate, WINDOW);
  const hop = Math.round((window * OVER) / HOPS_OVER);
  const length = Math.max(0, Math.floor((samples.length - window) / hop) + 1);
  const keys = keysOf(steps);
  const energiesAt = energiesIn(sound, keys, tuning);
  const energies = keys.map(() => new Float32Array(length));
  for (let i = 0; i < length; i++) {
    energiesAt(i * hop).forEach((energy, k) => {
      energies[k]![i] = energy;
    });
  }
  const rises = wholeNotes(energies.map(riseOf));
  const ofKey = new Map(keys.map((midi, k) => [midi, rises[k]!]));
  return {
    hop: hop / rate,
    start: window / 2 / rate,
    length,
    ofStep: (step) => meanOf(steps[step]!.map(({ key }) => ofKey.get(key.midi)!)),
  };
}

export const keysOf = (steps: readonly ExpectedStep[]): readonly number[] => [
  ...new Set(steps.flatMap((step) => step.map(({ key }) => key.midi))),
];

/** How loud the partial tones of each key are from a sample on; the next call overwrites it. */
export function energiesIn(
  sound: Sound,
  keys: readonly number[],
  tuning: number,
): (from: number) => Float32Array {
  const { rate } = sound;
  const spectra = spectraOf(sound, lengthAt(rate, WINDOW), HIGHEST);
  const most = Math.min(HIGHEST, 0.45 * rate);
  const places = keys.map((midi) =>
    partialsOf(midi, tuning, most, PARTIALS).map(({ frequency }) => frequency / spectra.spacing),
  );
  const energies = new Float32Array(keys.length);
  return (from) => {
    const sizes = spectra.at(from);
    for (const [k, of] of places.entries()) {
      let sum = 0;
      for (const place of of) {
        const low = Math.floor(place);
        sum += Math.sqrt(Math.max(sizes[low]!, sizes[low + 1]!));
      }
      energies[k] = sum / of.length;
    }
    return energies;
  };
}

function riseOf(energy: Float32Array): Float32Array {
  const half = HOPS_OVER / 2;
  return Float32Array.from(energy, (_, i) =>
    Math.max(0, (energy[i + half] ?? 0) - (energy[i - half] ?? energy[0]!)),
  );
}

function wholeNotes(rises: readonly Float32Array[]): readonly Float32Array[] {
  const greatest = rises.map((rise) => rise.toSorted()[Math.floor(GREAT * rise.length)] ?? 0);
  const usual = greatest.toSorted((a, b) => a - b)[greatest.length >> 1] ?? 0;
  return rises.map((rise, k) => {
    const whole = Math.max(greatest[k]!, USUAL * usual, 1e-9);
    return rise.map((value) => Math.min(1, value / whole));
  });
}

function meanOf(rises: readonly Float32Array[]): Float32Array {
  const [one, other] = [rises[0]!, rises[1]];
  return other === undefined ? one : one.map((value, i) => (value + other[i]!) / 2);
}
