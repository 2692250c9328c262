/**
 * The tone of one piano key, computed: a row of partials that are a little wider apart than harmonics, as stiff strings
 * have them, each dying away in its own time, and the knock of the hammer. Modest, but in tune: the first partial has
 * the frequency of the note, in equal temperament from A above middle C = 440 Hz (ISO 16).
 */

/** Hz. */
export const frequencyOf = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);

/** The knee of the felt hammer's spectrum, in Hz: partials above it are ever softer. */
const FELT = 2200;
/** Partials beyond this are left out, in Hz: they are soft and die at once. */
const HIGHEST = 7000;
const MOST_PARTIALS = 20;
/** Where along the string the hammer strikes, as a share of its length. */
const STRIKE = 1 / 8;

/**
 * The strings of one key first move together and give their energy to the soundboard fast, then against each other and
 * slowly: so a tone dies in two stages. Share of each, and factor of the time in which it dies.
 */
const STAGES = [
  { share: 0.7, slowness: 1 },
  { share: 0.3, slowness: 3 },
] as const;
/** So many partials have both; of the rest the second would be too soft to be missed. */
const TWO_STAGES = 6;

/** Seconds: no tone is longer, which bounds the memory; who plays slower than this hears it fade. */
const LONGEST = 3;
const ATTACK = 0.002;
const FADE_OUT = 0.5;
/** So many times its time constant, and a partial is 60 dB down; the whole tone is not waited for that long. */
const SILENT_AFTER = 6.9;
const OVER_AFTER = 5;

const KNOCK = { level: 0.05, seconds: 0.03, decay: 0.006 } as const;

/** Seconds in which the first partial falls to 1/e: about 1.2 in the middle, half of it an octave and a half higher. */
const decayOf = (midi: number): number => Math.min(2, 1.2 * 2 ** ((60 - midi) / 18));

/** How stiff the string is; doubles in 8 semitones from the low strings up (order of magnitude from memory). */
const stiffnessOf = (midi: number): number => 4e-4 * 2 ** (Math.max(-12, midi - 60) / 8);

interface Partial {
  readonly frequency: number;
  readonly level: number;
  /** Seconds to fall to 1/e. */
  readonly decay: number;
}

function partialsOf(midi: number, sampleRate: number): readonly Partial[] {
  const [base, stiffness] = [frequencyOf(midi), stiffnessOf(midi)];
  const highest = Math.min(HIGHEST, 0.45 * sampleRate);
  return Array.from({ length: MOST_PARTIALS }, (_, i) => {
    const n = i + 1;
    const frequency = n * base * Math.sqrt((1 + stiffness * n * n) / (1 + stiffness));
    const level = (Math.abs(Math.sin(Math.PI * n * STRIKE)) / n) * Math.exp(-frequency / FELT);
    return { frequency, level, decay: decayOf(midi) / (1 + 0.3 * i) };
  }).filter(({ frequency }, i) => i === 0 || frequency < highest);
}

/** Adds a dying sine: a pointer that turns and shrinks with each sample, so that nothing but products is computed. */
function addPartial(samples: Float32Array, sampleRate: number, partial: Partial): void {
  const { frequency, level, decay } = partial;
  const shrink = Math.exp(-1 / (decay * sampleRate));
  const angle = (2 * Math.PI * frequency) / sampleRate;
  const [cos, sin] = [shrink * Math.cos(angle), shrink * Math.sin(angle)];
  const length = Math.min(samples.length, Math.ceil(SILENT_AFTER * decay * sampleRate));
  let [x, y] = [level, 0];
  for (let i = 0; i < length; i += 1) {
    samples[i]! += y;
    [x, y] = [x * cos - y * sin, x * sin + y * cos];
  }
}

/** Noise that is the same each time: the hammer's felt and the key bed. */
function addKnock(samples: Float32Array, sampleRate: number): void {
  let seed = 1;
  let soft = 0;
  for (let i = 0; i < Math.min(samples.length, KNOCK.seconds * sampleRate); i += 1) {
    seed = (seed * 48_271) % 2_147_483_647;
    soft += 0.2 * (seed / 1_073_741_823.5 - 1 - soft);
    samples[i]! += KNOCK.level * soft * Math.exp(-i / (KNOCK.decay * sampleRate));
  }
}

/** A rise from 0 to 1 without a corner. */
const smooth = (share: number): number => Math.sin((Math.PI / 2) * Math.min(1, share)) ** 2;

function addEdges(samples: Float32Array, sampleRate: number): void {
  const last = samples.length - 1;
  const [attack, end] = [ATTACK * sampleRate, FADE_OUT * sampleRate];
  for (let i = 0; i < attack; i += 1) samples[i]! *= smooth((i + 1) / attack);
  for (let i = 0; i < end; i += 1) samples[last - i]! *= smooth(i / end);
}

/** The samples of a key that is held down, at most 3 seconds; about 1 where it is loudest. */
export function pianoSamples(midi: number, sampleRate: number): Float32Array<ArrayBuffer> {
  const seconds = Math.min(LONGEST, OVER_AFTER * decayOf(midi));
  const samples = new Float32Array(Math.round(seconds * sampleRate));
  for (const [i, { frequency, level, decay }] of partialsOf(midi, sampleRate).entries()) {
    for (const { share, slowness } of i < TWO_STAGES ? STAGES : STAGES.slice(0, 1)) {
      const stage = { frequency, level: level * share, decay: decay * slowness };
      addPartial(samples, sampleRate, stage);
    }
  }
  const loudest = samples.reduce((peak, value) => Math.max(peak, Math.abs(value)), 0);
  for (let i = 0; i < samples.length; i += 1) samples[i]! /= loudest;
  addKnock(samples, sampleRate);
  addEdges(samples, sampleRate);
  return samples;
}
