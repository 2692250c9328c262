/** What sox makes of a sound: a check from outside, as its room, noise, pitch and spectra know nothing of ours. */
import { spawnSync } from 'node:child_process';
import type { Sound } from '../../../shared/listening/sound/spectrum';
import { isProgram, need, type Program } from '../../install';

export const SOX: Program = { isThere: () => isProgram('sox'), packages: ['sox'] };

const raw = (rate: number): readonly string[] => [
  '-t',
  'raw',
  '-r',
  String(rate),
  '-c',
  '1',
  '-e',
  'floating-point',
  '-b',
  '32',
  '-',
];

function sox(args: readonly string[], input: Uint8Array): { stdout: Buffer; stderr: string } {
  need(SOX);
  const { stdout, stderr, status } = spawnSync('sox', args, { input, maxBuffer: 1e9 });
  if (status !== 0) throw new Error(`sox: ${String(stderr)}`);
  return { stdout, stderr: String(stderr) };
}

const bytesOf = ({ buffer, byteOffset, byteLength }: Float32Array): Uint8Array =>
  new Uint8Array(buffer, byteOffset, byteLength);

const samplesOf = (bytes: Buffer): Float32Array => new Float32Array(Uint8Array.from(bytes).buffer);

/** The sound after effects of sox: "reverb 35", "pitch -20". */
export function throughSox({ samples, rate }: Sound, effects: string): Sound {
  const { stdout } = sox([...raw(rate), ...raw(rate), ...effects.split(' ')], bytesOf(samples));
  return { samples: samplesOf(stdout), rate };
}

/** With pink noise of sox that is softer than the sound by so many decibels. */
export function withSoxNoise({ samples, rate }: Sound, decibels: number): Sound {
  const seconds = String(samples.length / rate);
  const { stdout } = sox(['-n', ...raw(rate), 'synth', seconds, 'pinknoise'], new Uint8Array());
  const noise = samplesOf(stdout);
  const gain = (levelOf(samples) / levelOf(noise)) * 10 ** (-decibels / 20);
  return { samples: samples.map((value, i) => value + gain * (noise[i] ?? 0)), rate };
}

const levelOf = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, value) => sum + value ** 2, 0) / samples.length);

/** The power spectrum that `sox … -n stat -freq` prints of the first 4096 samples: hertz and power. */
export function soxSpectrum({ samples, rate }: Sound): ReadonlyMap<number, number> {
  const args = [...raw(rate), '-n', 'stat', '-freq'];
  const { stderr } = sox(args, bytesOf(samples.slice(0, 4096)));
  const lines = stderr.split('\n').map((line) => line.trim().split(/\s+/).map(Number));
  return new Map(
    lines.flatMap(([hertz, power]) =>
      power === undefined || Number.isNaN(hertz! + power) ? [] : [[hertz!, power]],
    ),
  );
}
