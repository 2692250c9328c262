/** How well a room and its microphone let a piano be heard. */
import type { Sound } from './spectrum';

/** Seconds of a moment of loudness. */
const MOMENT = 0.05;
const LOUD = 0.9;
const QUIET = 0.05;
/** Samples from here on, so many in a row and so often, are clipped. */
const FULL = 0.985;
const IN_A_ROW = 3;
const OFTEN = 10;
/** Decibels below which missed notes cannot be told from noise. */
export const QUIET_ENOUGH = 15;

export interface Room {
  /** Decibels of the loud moments over the quiet ones. */
  readonly overNoise: number;
  readonly isClipped: boolean;
}

const decibels = (ratio: number): number => 20 * Math.log10(ratio);

/** Decibels of the whole sound, where 0 is the loudest sine. */
export const loudnessOf = ({ samples }: Sound): number => decibels(Math.SQRT2 * rootMean(samples));

const rootMean = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / Math.max(1, samples.length)) +
  1e-9;

/** Of a sound with quiet moments before or after the playing. */
export function roomOf({ samples, rate }: Sound): Room {
  const size = Math.round(MOMENT * rate);
  const moments = Array.from({ length: Math.floor(samples.length / size) }, (_, i) =>
    rootMean(samples.subarray(i * size, (i + 1) * size)),
  ).toSorted((a, b) => a - b);
  const at = (share: number): number => moments[Math.floor(share * moments.length)] ?? 1e-9;
  return { overNoise: decibels(at(LOUD) / at(QUIET)), isClipped: isClipped(samples) };
}

function isClipped(samples: Float32Array): boolean {
  let [row, times] = [0, 0];
  for (const value of samples) {
    row = Math.abs(value) >= FULL ? row + 1 : 0;
    if (row === IN_A_ROW) times += 1;
  }
  return times >= OFTEN;
}
