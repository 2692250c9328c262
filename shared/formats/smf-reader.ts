/**
 * Reads Standard MIDI Files, formats 0 and 1, as takes (MIDI Manufacturers Association, Standard MIDI Files 1.0, RP-001).
 * Whatever is wrong with a file is a MidiFileError, whose message is for the person.
 */
import { type Collector, collecting } from '../listening/collect';
import type { Take } from '../listening/take';

/** Bytes; to be asked before a file is opened. An hour of practice has some 300 kB. */
export const LARGEST_MIDI_FILE = 1_000_000;
const MOST_EVENTS = 200_000;

const OTHER_FILE = 'Choose another recording.';

export class MidiFileError extends Error {
  override readonly name = 'MidiFileError';
}

const fail = (problem: string): never => {
  throw new MidiFileError(`${problem} ${OTHER_FILE}`);
};
const cutOff = (): never => fail('This MIDI file is damaged: it stops in the middle.');
const damaged = (): never => fail('This MIDI file is damaged.');

const META = 0xff;
const SYSTEM_EXCLUSIVE = new Set([0xf0, 0xf7]);
const END_OF_TRACK = 0x2f;
const SET_TEMPO = 0x51;
/** Microseconds of a crotchet until a file says otherwise: 120 a minute. */
const USUAL_TEMPO = 500_000;
/** A division with this bit counts frames of film and not parts of a crotchet. */
const SMPTE = 0x8000;

interface FileEvent {
  readonly tick: number;
  /** A message of a channel; or microseconds of a crotchet from here on. */
  readonly message: readonly number[] | null;
  readonly tempo: number | null;
}

/** Goes through bytes and never past their end. */
class Bytes {
  private at = 0;

  constructor(private readonly bytes: Uint8Array) {}

  get isOver(): boolean {
    return this.at >= this.bytes.length;
  }

  next(): number {
    return this.bytes[this.at++] ?? cutOff();
  }

  peek(): number {
    return this.bytes[this.at] ?? cutOff();
  }

  number(size: number): number {
    let value = 0;
    for (let i = 0; i < size; i++) value = value * 256 + this.next();
    return value;
  }

  /** Seven bits a byte, four bytes at most. */
  variable(): number {
    let value = 0;
    for (let i = 0; i < 4; i++) {
      const byte = this.next();
      value = value * 128 + (byte & 0x7f);
      if (byte < 0x80) return value;
    }
    return damaged();
  }

  part(length: number): Uint8Array {
    if (length > this.bytes.length - this.at) return cutOff();
    this.at += length;
    return this.bytes.subarray(this.at - length, this.at);
  }
}

/** The take that a file holds. Throws nothing but a MidiFileError. */
export function readMidiFile(bytes: Uint8Array): Take {
  if (bytes.length > LARGEST_MIDI_FILE) fail('This file is too large for a recording of playing.');
  const file = new Bytes(bytes);
  const ticksPerBeat = headerOf(file);
  const events: FileEvent[] = [];
  while (!file.isOver) {
    const { id, data } = chunkOf(file);
    // Chunks of other kinds may come at any place and are to be passed over, by the specification.
    if (id === 'MTrk') readTrack(new Bytes(data), events);
  }
  return takeOf(events, ticksPerBeat);
}

function chunkOf(file: Bytes): { readonly id: string; readonly data: Uint8Array } {
  const id = String.fromCharCode(...file.part(4));
  return { id, data: file.part(file.number(4)) };
}

/** Ticks of a crotchet. */
function headerOf(file: Bytes): number {
  const isMidi = !file.isOver && file.peek() === 0x4d;
  if (!isMidi) return fail('This is not a MIDI file.');
  const { id, data } = chunkOf(file);
  if (id !== 'MThd') return fail('This is not a MIDI file.');
  const header = new Bytes(data);
  const [format, , division] = [header.number(2), header.number(2), header.number(2)];
  if (format === 2) return fail('This MIDI file holds several pieces (format 2).');
  if (format > 2) return damaged();
  if (division >= SMPTE) return fail('This MIDI file counts in frames of film, not in beats.');
  return division === 0 ? damaged() : division;
}

function readTrack(track: Bytes, events: FileEvent[]): void {
  let [tick, running] = [0, 0];
  while (!track.isOver) {
    tick += track.variable();
    const status = track.peek() < 0x80 ? running : track.next();
    if (status === META) {
      const type = track.next();
      const data = track.part(track.variable());
      if (type === END_OF_TRACK) return;
      if (type === SET_TEMPO) events.push({ tick, message: null, tempo: tempoOf(data) });
      running = 0;
    } else if (SYSTEM_EXCLUSIVE.has(status)) {
      track.part(track.variable());
      running = 0;
    } else if (status >= 0x80 && status < 0xf0) {
      running = status;
      events.push({ tick, message: [status, ...dataOf(track, status)], tempo: null });
    } else damaged();
    if (events.length > MOST_EVENTS) fail('This MIDI file holds too much for a recording.');
  }
}

/** One byte after a change of program or of channel pressure, else two; each below 128. */
function dataOf(track: Bytes, status: number): readonly number[] {
  const kind = status & 0xf0;
  const data = [...track.part(kind === 0xc0 || kind === 0xd0 ? 1 : 2)];
  return data.every((byte) => byte < 0x80) ? data : damaged();
}

function tempoOf(data: Uint8Array): number {
  const tempo = data.length === 3 ? new Bytes(data).number(3) : 0;
  return tempo === 0 ? damaged() : tempo;
}

function takeOf(events: readonly FileEvent[], ticksPerBeat: number): Take {
  const collector: Collector = collecting('file');
  let [seconds, tick, tempo] = [0, 0, USUAL_TEMPO];
  for (const event of events.toSorted((a, b) => a.tick - b.tick)) {
    seconds += ((event.tick - tick) * tempo) / ticksPerBeat / 1_000_000;
    tick = event.tick;
    if (event.tempo !== null) tempo = event.tempo;
    if (event.message !== null) collector.add(event.message, seconds);
  }
  return collector.take();
}
