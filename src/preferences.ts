/** What a person prefers on this device. Kept by the store under one key; not part of the log, not in a backup. */
import { effect, signal, type ReadonlySignal } from '@preact/signals';
import * as v from 'valibot';
import { NAME_STYLES } from '../shared/music/names';
import type { Store } from './store/store';

const KEY = 'preferences';

export const THEMES = ['system', 'light', 'dark'] as const;
/** How the beat comes: a click and a mark, only the mark, or not at all (then one turns by hand). */
export const BEATS = ['heard', 'seen', 'off'] as const;
/** What stands under the chord while it is played: the drawn keys with the fingers, or the engraved notes. */
export const PICTURES = ['keys', 'staff'] as const;
export const KEY_SIGNATURES = ['none', 'own'] as const;
/** What the app listens to while one plays. */
export const EARS = ['none', 'midi', 'microphone'] as const;
/** What turns the page while a run is heard: the beat (without one, the hand), or the player's own playing. */
export const TURNERS = ['beat', 'player'] as const;
/** Milliseconds by which the seen beat may be moved against the heard one. */
export const MOST_LATENCY = 300;

const pedalKeys = v.fallback(
  v.pipe(v.array(v.pipe(v.string(), v.maxLength(40))), v.maxLength(8)),
  [],
);

/** MIDI number of a key of the piano that was learnt; null where none was. */
const pianoKey = v.nullable(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(127)));

const name = v.exactOptional(v.picklist(['sharp', 'flat']));

/** Each field with its check and its default: what is damaged or unknown falls back alone. */
const schema = v.object({
  nameStyle: v.fallback(v.picklist(NAME_STYLES), 'letters'),
  /** Names fixed for black starting notes: "sharp" or "flat". */
  blackNames: v.fallback(v.object({ db: name, eb: name, gb: name, ab: name, bb: name }), {}),
  theme: v.fallback(v.picklist(THEMES), 'system'),
  beat: v.fallback(v.picklist(BEATS), 'heard'),
  picture: v.fallback(v.picklist(PICTURES), 'keys'),
  /** Whether each chord is written in its own key, or all with accidentals alone. */
  keySignature: v.fallback(v.picklist(KEY_SIGNATURES), 'none'),
  ear: v.fallback(v.picklist(EARS), 'none'),
  turner: v.fallback(v.picklist(TURNERS), 'beat'),
  /** Keys of a MIDI keyboard that rate (from the worst level to the best) and go on while nothing is being played. */
  pianoKeys: v.fallback(
    v.object({
      levels: v.tuple([pianoKey, pianoKey, pianoKey, pianoKey, pianoKey]),
      forward: pianoKey,
      back: pianoKey,
    }),
    { levels: [null, null, null, null, null], forward: null, back: null },
  ),
  /** Whether the sustain pedal, held down, goes on as well. */
  holdsPedal: v.fallback(v.boolean(), false),
  /** Cents of the person's piano from A4 = 440 Hz; null until it was measured. */
  pianoCents: v.fallback(v.nullable(v.pipe(v.number(), v.minValue(-50), v.maxValue(50))), null),
  /** 0 to 1. */
  volume: v.fallback(v.pipe(v.number(), v.minValue(0), v.maxValue(1)), 0.7),
  latencyOffsetMs: v.fallback(
    v.pipe(v.number(), v.minValue(-MOST_LATENCY), v.maxValue(MOST_LATENCY)),
    0,
  ),
  /** Values of `event.key` that a pedal sends besides the usual ones. */
  forwardKeys: pedalKeys,
  backKeys: pedalKeys,
});

export type Preferences = Readonly<v.InferOutput<typeof schema>>;

/** The preferences in a kept value of any origin. */
export const readPreferences = (kept: unknown): Preferences => {
  const result = v.safeParse(schema, kept);
  return result.success ? result.output : v.parse(schema, {});
};

const current = signal(readPreferences({}));
export const preferences: ReadonlySignal<Preferences> = current;

let keeper: Store | null = null;

/** Reads what the device keeps and follows it; call once, with the person's own store. */
export async function startPreferences(store: Store): Promise<void> {
  keeper = store;
  effect(() => {
    const { theme } = current.value;
    if (theme === 'system') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
  });
  // Where nothing can be read the defaults hold, and the shell says what is wrong with the store.
  current.value = readPreferences(await store.kept(KEY).catch(() => null));
}

/** Changes some preferences at once and keeps them. Rejects if they could not be kept; they hold until a reload. */
export async function prefer(change: Partial<Preferences>): Promise<void> {
  current.value = { ...current.value, ...change };
  await keeper?.keep(KEY, current.value);
}
