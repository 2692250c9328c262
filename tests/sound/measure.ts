/** What one can measure in rendered sound: pitch, level at a pitch, and when a pitch begins. */

export interface Sound {
  readonly samples: Float32Array;
  readonly sampleRate: number;
}

interface Pointer {
  readonly size: number;
  /** Radians. */
  readonly phase: number;
}

/** The share of one frequency (Hz) in a piece of sound (seconds), by correlation through a Hann window. */
function pointerAt(
  { samples, sampleRate }: Sound,
  frequency: number,
  { from, length }: { readonly from: number; readonly length: number },
): Pointer {
  const first = Math.round(from * sampleRate);
  const count = Math.round(length * sampleRate);
  let [real, imaginary] = [0, 0];
  for (let i = 0; i < count; i += 1) {
    const window = 1 - Math.cos((2 * Math.PI * i) / count);
    const angle = (2 * Math.PI * frequency * (first + i)) / sampleRate;
    const value = window * (samples[first + i] ?? 0);
    real += value * Math.cos(angle);
    imaginary -= value * Math.sin(angle);
  }
  return { size: (2 * Math.hypot(real, imaginary)) / count, phase: Math.atan2(imaginary, real) };
}

/** Amplitude at a frequency around a time, in full scale. */
export const levelAt = (sound: Sound, frequency: number, time: number, length = 0.05): number =>
  pointerAt(sound, frequency, { from: time - length / 2, length }).size;

/**
 * The frequency (Hz) of the strongest sine within a semitone of a guess, from `from` on: the strongest of a scan in steps
 * of 5 cents, then from how far its phase moves in a twentieth of a second.
 */
export function frequencyNear(sound: Sound, guess: number, from: number): number {
  const length = 0.5;
  const guesses = Array.from({ length: 41 }, (_, i) => guess * 2 ** ((i - 20) / 240));
  const sizes = guesses.map((one) => pointerAt(sound, one, { from, length }).size);
  const strongest = guesses[sizes.indexOf(Math.max(...sizes))]!;
  const apart = 0.05;
  const [early, late] = [from, from + apart].map(
    (start) => pointerAt(sound, strongest, { from: start, length }).phase,
  );
  const turned = (late! - early!) / (2 * Math.PI);
  return strongest + (turned - Math.round(turned)) / apart;
}

/** When a frequency begins to sound, in seconds, near an expected time: where it comes to half of its full level. */
export function onsetNear(sound: Sound, frequency: number, expected: number): number {
  const step = 0.0005;
  const around = 0.04;
  const times = Array.from({ length: (2 * around) / step }, (_, i) => expected - around + i * step);
  const levels = times.map((time) => levelAt(sound, frequency, time));
  const full = Math.max(...levels);
  return times[levels.findIndex((level) => level >= full / 2)]!;
}

export const centsBetween = (a: number, b: number): number => 1200 * Math.log2(a / b);

export const peakOf = ({ samples }: Sound): number =>
  samples.reduce((peak, value) => Math.max(peak, Math.abs(value)), 0);
