/**
 * Which keys begin at a moment: the spectrum after it less the one before it, taken apart into the keys of a piano by
 * non-negative factorisation with the Kullback-Leibler divergence (Lee & Seung 2001, NIPS 13).
 */
import { partialsOf } from './piano';
import { lengthAt, type Sound, type Spectra, spectraOf } from './spectrum';

/** Sound before and after a moment: most samples, and as a share of the time from note to note. */
const LONGEST = 8192;
const SHARE = 0.85;
const ITERATIONS = 25;
const PARTIALS = 14;
const FAINTEST = 0.02;
const HIGHEST = 8000;
/** Share of that up to which the highest partial may lie and reach. */
const ABOVE = 1.05;
/** Cents by which a partial may lie elsewhere; from STRETCHED on one more a semitone, as pianos are tuned wider there. */
const TOLERANCE = 10;
const STRETCHED = 80;
/** Half width of what a sine becomes under a Hann window, in values of a spectrum without padding. */
const LOBE = 2;

interface Template {
  readonly places: Int32Array;
  /** With a sum of 1. */
  readonly values: Float32Array;
}

/** What begins at a moment. */
export interface Evidence {
  /** The keys that were looked for: `lowest`, `lowest + 1`, ... with how much of each begins. */
  readonly lowest: number;
  readonly amounts: Float32Array;
  /** Sum of the amounts. */
  readonly total: number;
  /** How much the natural logarithm of the even partials of a key lies above that of the odd ones. */
  evenOverOdd(midi: number): number;
}

export interface Range {
  readonly lowest: number;
  readonly highest: number;
}

export interface EvidenceOptions {
  /** Seconds from note to note. */
  readonly interval: number;
  /** Cents. */
  readonly tuning: number;
  readonly keys: Range;
}

/** A function of a moment in seconds. */
export function evidenceIn(sound: Sound, options: EvidenceOptions): (at: number) => Evidence {
  const { interval, tuning, keys } = options;
  const { rate } = sound;
  const length = Math.min(lengthAt(rate, LONGEST), Math.round(SHARE * interval * rate));
  const lobe = (LOBE * rate) / length;
  const most = Math.min(HIGHEST, 0.45 * rate);
  const spectra = spectraOf(sound, length, ABOVE * most);
  const templates = Array.from({ length: keys.highest - keys.lowest + 1 }, (_, i) =>
    templateOf(keys.lowest + i, spectra, { tuning, lobe, most }),
  );
  const used = 1 + Math.max(...templates.flatMap(({ places }) => [...places]));
  return (at) => {
    const before = spectra.at(at * rate - length).slice(0, used);
    const after = spectra.at(at * rate);
    const rise = before.map((value, k) => Math.max(0, after[k]! - value));
    const amounts = factorised(rise, templates);
    return {
      lowest: keys.lowest,
      amounts,
      total: amounts.reduce((sum, amount) => sum + amount, 0),
      evenOverOdd: (midi) => {
        const sizes = partialsOf(midi, tuning, most, 6).map(({ frequency }) =>
          greatestNear(rise, frequency / spectra.spacing),
        );
        const [odd, even] = [1, 0].map((rest) =>
          sizes.reduce((sum, size, i) => ((i + 1) % 2 === rest ? sum + size : sum), 1e-9),
        );
        return Math.log(even! / odd!);
      },
    };
  };
}

const greatestNear = (sizes: Float32Array, place: number): number => {
  const middle = Math.round(place);
  return Math.max(sizes[middle - 1] ?? 0, sizes[middle] ?? 0, sizes[middle + 1] ?? 0);
};

function templateOf(
  midi: number,
  { spacing, size }: Spectra,
  { tuning, lobe, most }: { readonly tuning: number; readonly lobe: number; readonly most: number },
): Template {
  const cents = TOLERANCE + Math.max(0, midi - STRETCHED);
  const values = new Map<number, number>();
  for (const { frequency, strength } of partialsOf(midi, tuning, most, PARTIALS)) {
    if (strength < FAINTEST) break;
    const slack = frequency * (2 ** (cents / 1200) - 1);
    const first = Math.ceil((frequency - slack - lobe) / spacing);
    const last = Math.min(size - 1, Math.floor((frequency + slack + lobe) / spacing));
    for (let k = first; k <= last; k++) {
      const off = Math.max(0, Math.abs(k * spacing - frequency) - slack) / lobe;
      const value = strength * Math.cos((Math.PI / 2) * off) ** 2;
      values.set(k, Math.max(value, values.get(k) ?? 0));
    }
  }
  const sum = [...values.values()].reduce((total, value) => total + value, 0);
  return {
    places: Int32Array.from(values.keys()),
    values: Float32Array.from(values.values(), (value) => value / sum),
  };
}

/** How much of each template is in a spectrum. */
function factorised(spectrum: Float32Array, templates: readonly Template[]): Float32Array {
  const amounts = new Float32Array(templates.length);
  const whole = spectrum.reduce((sum, value) => sum + value, 0);
  if (whole === 0) return amounts;
  amounts.fill(whole / templates.length);
  const model = new Float32Array(spectrum.length);
  for (let round = 0; round < ITERATIONS; round++) {
    model.fill(1e-12);
    for (let t = 0; t < templates.length; t++) {
      const { places, values } = templates[t]!;
      const amount = amounts[t]!;
      for (let i = 0; i < places.length; i++) model[places[i]!]! += amount * values[i]!;
    }
    // Of the model no more is needed than how many times less it is; divided once for all keys, which is what costs.
    for (let k = 0; k < model.length; k++) model[k] = spectrum[k]! / model[k]!;
    for (let t = 0; t < templates.length; t++) {
      const { places, values } = templates[t]!;
      let gain = 0;
      for (let i = 0; i < places.length; i++) gain += values[i]! * model[places[i]!]!;
      amounts[t]! *= gain;
    }
  }
  return amounts;
}
