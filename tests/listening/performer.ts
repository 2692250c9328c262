/** A seeded player: plays what is expected, with a natural spread, and with the faults that are planted. */
import type { Expected } from '../../shared/listening/expected';
import type { HeardNote, Take } from '../../shared/listening/take';
import type { Hand } from '../../shared/music/fingering/types';

export interface Planted {
  /** Seconds by which all waits before a step; a long one is a stop. */
  readonly waits?: readonly { readonly step: number; readonly seconds: number }[];
  readonly wrong?: readonly { readonly step: number; readonly hand: Hand; readonly by: number }[];
  readonly missed?: readonly { readonly step: number; readonly hand: Hand }[];
  /** Between a step and the next. */
  readonly extra?: readonly { readonly step: number; readonly midi: number }[];
  /** The player breaks off after `at` and begins again `from`, after a pause in seconds. */
  readonly restarts?: readonly {
    readonly at: number;
    readonly from: number;
    readonly pause: number;
  }[];
  /** Breaks off for good after this step. */
  readonly until?: number;
  readonly thumbLate?: Readonly<Partial<Record<Hand, number>>>;
  readonly thumbAccent?: Readonly<Partial<Record<Hand, number>>>;
  /** Seconds by which the left hand comes late. */
  readonly leftLate?: number;
  /** Per cent by which the tempo changes from the first note to the last. */
  readonly drift?: number;
}

export interface Playing {
  readonly random: () => number;
  /** Notes a minute. */
  readonly tempo: number;
  /** Standard deviation of an onset in seconds. */
  readonly spread: number;
  readonly planted?: Planted;
  /** Seconds that a key is held into the next note. */
  readonly overlap?: number;
  /** Is told which step and hand each of the notes stands for, wrong ones too, and when it begins. */
  readonly onNote?: (step: number, on: number, hand: Hand) => void;
}

/** mulberry32 (Tommy Ettinger, public domain): 0 to just under 1. */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Box & Muller 1958. */
export const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** The steps in the order of playing, with restarts. */
function courseOf(count: number, { restarts = [], until = count - 1 }: Planted) {
  const course: { step: number; pause: number }[] = [];
  let [step, pause] = [0, 0];
  const waiting = [...restarts];
  while (step <= until) {
    course.push({ step, pause });
    pause = 0;
    if (waiting[0]?.at === step) {
      const { from, pause: rest } = waiting.shift()!;
      [step, pause] = [from, rest];
    } else step += 1;
  }
  return course;
}

/** One playing; the truth of it is what was planted, and the tempo. */
export function perform({ steps }: Expected, playing: Playing): Take {
  const { random, tempo, spread, planted = {}, overlap = 0.02 } = playing;
  const notes: HeardNote[] = [];
  const usual = 60 / tempo;
  let now = 0.5;
  for (const { step, pause } of courseOf(steps.length, planted)) {
    const change = (planted.drift ?? 0) / 100;
    const length = usual / (1 + change * (step / (steps.length - 1) - 0.5));
    now += pause + (notes.length === 0 ? 0 : length);
    for (const wait of planted.waits ?? []) if (wait.step === step) now += wait.seconds;
    for (const { hand, key, finger } of steps[step]!) {
      if (planted.missed?.some((one) => one.step === step && one.hand === hand)) continue;
      const isThumb = finger === 1;
      const late =
        (hand === 'left' ? (planted.leftLate ?? 0) : 0) +
        (isThumb ? (planted.thumbLate?.[hand] ?? 0) : 0);
      const on = now + late + spread * normal(random);
      const accent = isThumb ? (planted.thumbAccent?.[hand] ?? 0) : 0;
      const wrong = planted.wrong?.find((one) => one.step === step && one.hand === hand);
      playing.onNote?.(step, on, hand);
      notes.push({
        midi: key.midi + (wrong?.by ?? 0),
        on,
        off: on + length + overlap,
        loudness: Math.round(Math.min(127, Math.max(1, 62 + accent + 3 * normal(random)))),
        confidence: 1,
      });
    }
    for (const { midi } of (planted.extra ?? []).filter((one) => one.step === step)) {
      const on = now + length * (0.4 + 0.2 * random());
      notes.push({ midi, on, off: on + 0.05, loudness: 40, confidence: 1 });
    }
  }
  return {
    source: 'midi',
    notes: notes.toSorted((a, b) => a.on - b.on),
    pedal: [],
    hasTimeOfEachHand: true,
  };
}
