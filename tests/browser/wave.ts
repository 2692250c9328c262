/** A sound as a wave file, for the browser's fake microphone. */
import { writeFileSync } from 'node:fs';
import type { Sound } from '../../shared/listening/sound/spectrum';

/** 16 bits, one channel (RIFF WAVE, Microsoft and IBM 1991). */
export function writeWave(file: string, { samples, rate }: Sound): void {
  const head = Buffer.alloc(44);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + 2 * samples.length, 4);
  head.write('WAVEfmt ', 8);
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(1, 22);
  head.writeUInt32LE(rate, 24);
  head.writeUInt32LE(2 * rate, 28);
  head.writeUInt16LE(2, 32);
  head.writeUInt16LE(16, 34);
  head.write('data', 36);
  head.writeUInt32LE(2 * samples.length, 40);
  const data = Int16Array.from(samples, (value) =>
    Math.round(32_767 * Math.max(-1, Math.min(1, value))),
  );
  writeFileSync(file, Buffer.concat([head, Buffer.from(data.buffer)]));
}
