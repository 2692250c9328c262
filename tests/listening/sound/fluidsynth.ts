/** Takes played by Debian's fluidsynth with a General MIDI sound font: a piano that knows nothing of our templates. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type MidiEvent, writeMidi } from 'midi-file';
import type { Sound } from '../../../shared/listening/sound/spectrum';
import type { Take } from '../../../shared/listening/take';
import { isProgram, need, type Program } from '../../install';

const FONT = '/usr/share/sounds/sf2/TimGM6mb.sf2';
export const FLUIDSYNTH: Program = {
  isThere: () => existsSync(FONT) && isProgram('fluidsynth'),
  packages: ['fluidsynth', 'timgm6mb-soundfont'],
};
const RATE = 44_100;
/** Ticks of a beat of one second. */
const TICKS = 24_000;
/** Seconds of silence before and after each take. */
export const SILENCE = 0.6;

const lengthOf = ({ notes }: Take): number =>
  Math.max(...notes.map(({ on, off }) => off ?? on)) + 2 * SILENCE;

/** The sound of each take, its times SILENCE later; all are rendered at once, as starting takes longest. */
export function rendered(takes: readonly Take[]): readonly Sound[] {
  need(FLUIDSYNTH);
  const starts = [0];
  for (const take of takes) starts.push(starts.at(-1)! + lengthOf(take));
  const events = takes.flatMap(({ notes }, i) =>
    notes.flatMap(({ midi, on, off, loudness }) => [
      { at: starts[i]! + SILENCE + on, event: noteEvent('noteOn', midi, loudness ?? 64) },
      { at: starts[i]! + SILENCE + off!, event: noteEvent('noteOff', midi, 0) },
    ]),
  );
  // So that the file is as long as the takes: a silent end.
  events.push({ at: starts.at(-1)!, event: noteEvent('noteOff', 60, 0) });
  const folder = mkdtempSync(join(tmpdir(), 'piano-'));
  try {
    const [file, wave] = [join(folder, 'takes.mid'), join(folder, 'takes.wav')];
    writeFileSync(file, Buffer.from(fileOf(events)));
    const settings = ['-r', String(RATE), '-R', '0', '-C', '0', '-g', '0.6', '-z', '64'];
    const { status, stderr } = spawnSync('fluidsynth', [
      '-niq',
      ...settings,
      '-F',
      wave,
      FONT,
      file,
    ]);
    if (status !== 0) throw new Error(`fluidsynth: ${String(stderr)}`);
    const samples = leftChannel(readFileSync(wave));
    return takes.map((_, i) => ({
      samples: samples.slice(starts[i]! * RATE, starts[i + 1]! * RATE),
      rate: RATE,
    }));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const noteEvent = (type: 'noteOn' | 'noteOff', noteNumber: number, velocity: number) =>
  ({ type, noteNumber, velocity, channel: 0 }) as const;

function fileOf(events: readonly { at: number; event: ReturnType<typeof noteEvent> }[]) {
  let before = 0;
  const timed = events
    .toSorted((a, b) => a.at - b.at)
    .map(({ at, event }) => {
      const tick = Math.round(at * TICKS);
      const deltaTime = tick - before;
      before = tick;
      return { ...event, deltaTime };
    });
  const track: MidiEvent[] = [
    { deltaTime: 0, type: 'setTempo', meta: true, microsecondsPerBeat: 1_000_000 },
    ...timed,
    { deltaTime: 0, type: 'endOfTrack', meta: true },
  ];
  return writeMidi({
    header: { format: 0, numTracks: 1, ticksPerBeat: TICKS },
    tracks: [track],
  });
}

/** Of 16-bit stereo in a wave file. */
function leftChannel(wave: Buffer): Float32Array {
  const data = wave.indexOf('data') + 8;
  const count = (wave.length - data) >> 2;
  return Float32Array.from({ length: count }, (_, i) => wave.readInt16LE(data + 4 * i) / 32_768);
}
