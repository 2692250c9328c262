/** What rooms and phones do to the sound of a piano. */
import { type Sound } from '../../../shared/listening/sound/spectrum';

export interface Place {
  /** Seconds in which the sound of the room falls by 60 dB, and how loud it is against the piano. */
  readonly reverberation: number;
  readonly wet: number;
  /** Decibels of the piano over pink noise. */
  readonly overNoise: number;
  /** Hertz of a high-pass and a low-pass, as small microphones have them. */
  readonly band: readonly [number, number] | null;
}

export const PLACES = {
  dry: { reverberation: 0.1, wet: 0, overNoise: 60, band: null },
  room: { reverberation: 0.5, wet: 0.25, overNoise: 30, band: null },
  phone: { reverberation: 0.7, wet: 0.4, overNoise: 20, band: [150, 8000] },
} as const satisfies Readonly<Record<string, Place>>;

/** Delays in seconds of Schroeder's parallel combs and allpasses (1962, J. Audio Eng. Soc. 10:219). */
const COMBS = [0.0297, 0.0371, 0.0411, 0.0437];
const ALLPASSES = [0.005, 0.0017];
const ALLPASS_GAIN = 0.7;

export function spoiled({ samples, rate }: Sound, place: Place, random: () => number): Sound {
  const room = reverberated(samples, rate, place.reverberation);
  const wet = samples.map((value, i) => value + place.wet * room[i]!);
  const noise = pinkNoise(samples.length, random);
  const gain = (levelOf(wet) / levelOf(noise)) * 10 ** (-place.overNoise / 20);
  const noisy = wet.map((value, i) => value + gain * noise[i]!);
  return { samples: place.band === null ? noisy : filtered(noisy, rate, place.band), rate };
}

const levelOf = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, value) => sum + value ** 2, 0) / samples.length);

function reverberated(samples: Float32Array, rate: number, seconds: number): Float32Array {
  const sum = new Float32Array(samples.length);
  for (const delay of COMBS) {
    const gain = 10 ** ((-3 * delay) / seconds);
    const back = Math.round(delay * rate);
    const line = new Float32Array(samples.length);
    for (let i = back; i < line.length; i++) {
      line[i] = samples[i - back]! + gain * line[i - back]!;
      sum[i]! += line[i]! / COMBS.length;
    }
  }
  return ALLPASSES.reduce((input, delay) => {
    const back = Math.round(delay * rate);
    const output = new Float32Array(input.length);
    for (let i = 0; i < input.length; i++) {
      const [past, before] = [input[i - back] ?? 0, output[i - back] ?? 0];
      output[i] = -ALLPASS_GAIN * input[i]! + past + ALLPASS_GAIN * before;
    }
    return output;
  }, sum);
}

/** Octave rows of held random values, summed (Voss; Gardner 1978, Scientific American 238 no. 4). */
function pinkNoise(length: number, random: () => number): Float32Array {
  const rows = new Float64Array(16);
  return Float32Array.from({ length }, (_, i) => {
    const row = Math.min(rows.length - 1, 31 - Math.clz32((i + 1) & -(i + 1)));
    rows[row] = random() - 0.5;
    return rows.reduce((sum, value) => sum + value, random() - 0.5);
  });
}

/** One pole each way. */
function filtered(samples: Float32Array, rate: number, [low, high]: readonly [number, number]) {
  const share = (hertz: number) => 1 - Math.exp((-2 * Math.PI * hertz) / rate);
  let [slow, smooth] = [0, 0];
  return samples.map((value) => {
    slow += share(low) * (value - slow);
    smooth += share(high) * (value - slow - smooth);
    return smooth;
  });
}

/** The sound `cents` higher, and as much shorter. */
export function retuned({ samples, rate }: Sound, cents: number): Sound {
  const step = 2 ** (cents / 1200);
  return {
    samples: Float32Array.from({ length: Math.floor(samples.length / step) - 1 }, (_, i) => {
      const at = Math.floor(i * step);
      const part = i * step - at;
      return samples[at]! * (1 - part) + samples[at + 1]! * part;
    }),
    rate,
  };
}
