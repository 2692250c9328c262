/** MIDI files written by an independent library, and by this app, read back; and damaged ones refused. */
import { type MidiData, type MidiEvent, writeMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import { midiFile } from '../../shared/formats/smf';
import { LARGEST_MIDI_FILE, MidiFileError, readMidiFile } from '../../shared/formats/smf-reader';
import { isPedalled, type Take } from '../../shared/listening/take';
import { fc } from '../learning/property';
import { anyItemScore, timed } from './scores';
import { seededNumbers } from './spoil';

const header = (more: object = {}) => ({ format: 1, numTracks: 1, ticksPerBeat: 480, ...more });
const written = (tracks: MidiEvent[][], more: object = {}, options = {}): Uint8Array =>
  Uint8Array.from(writeMidi({ header: header(more), tracks } as MidiData, options));

const on = (deltaTime: number, noteNumber: number, velocity = 70, channel = 0): MidiEvent => ({
  type: 'noteOn',
  deltaTime,
  noteNumber,
  velocity,
  channel,
});
const off = (deltaTime: number, noteNumber: number, channel = 0): MidiEvent => ({
  type: 'noteOff',
  deltaTime,
  noteNumber,
  velocity: 0,
  channel,
});
const pedal = (deltaTime: number, value: number): MidiEvent => ({
  type: 'controller',
  deltaTime,
  controllerType: 64,
  value,
  channel: 0,
});
const tempo = (deltaTime: number, microsecondsPerBeat: number): MidiEvent => ({
  type: 'setTempo',
  deltaTime,
  microsecondsPerBeat,
});
const END: MidiEvent = { type: 'endOfTrack', deltaTime: 0 };

const timesOf = (take: Take) =>
  take.notes.map((note) => [note.midi, Number(note.on.toFixed(4)), Number(note.off?.toFixed(4))]);

describe('files written by midi-file', () => {
  it.each([
    ['plainly', {}],
    ['with running status', { running: true }],
    ['with note-offs as note-ons of velocity 0', { useByte9ForNoteOff: true, running: true }],
  ])('have their notes, %s', (_, options) => {
    const bytes = written(
      [[on(480, 60), on(240, 64, 30), off(240, 60), off(0, 64), END]],
      {},
      options,
    );
    const take = readMidiFile(bytes);
    // 120 crotchets a minute, until the file says otherwise.
    expect(timesOf(take)).toEqual([
      [60, 0.5, 1],
      [64, 0.75, 1],
    ]);
    expect(take.notes.map(({ loudness }) => loudness)).toEqual([70, 30]);
    expect(take).toMatchObject({ source: 'file', pedal: [], hasTimeOfEachHand: true });
  });

  it('follow the tempo map of another track', () => {
    const bytes = written([
      [tempo(0, 1_000_000), tempo(480, 250_000), END],
      [on(0, 60), off(480, 60), on(0, 62), off(480, 62), on(480, 64), off(480, 64), END],
    ]);
    expect(timesOf(readMidiFile(bytes))).toEqual([
      [60, 0, 1],
      [62, 1, 1.25],
      [64, 1.5, 1.75],
    ]);
  });

  it('keep apart what two hands do on channels of their own, in format 0 as in format 1', () => {
    const events = [on(0, 60), on(240, 60, 50, 1), off(240, 60), off(240, 60, 1), END];
    expect(timesOf(readMidiFile(written([events], { format: 0 })))).toEqual([
      [60, 0, 0.5],
      [60, 0.25, 0.75],
    ]);
  });

  it('have the pedal beside the notes', () => {
    const bytes = written([
      [pedal(0, 90), on(480, 60), off(240, 60), pedal(240, 10), pedal(480, 64), END],
    ]);
    const take = readMidiFile(bytes);
    expect(take.pedal).toEqual([
      { from: 0, to: 1 },
      { from: 1.5, to: null },
    ]);
    expect(isPedalled(take)).toBe(true);
    expect(timesOf(take)).toEqual([[60, 0.5, 0.75]]);
  });

  it('may hold text, programs, pressure, bends, exclusive messages and chunks of other kinds', () => {
    const bytes = written([
      [
        { type: 'trackName', deltaTime: 0, text: 'practice' },
        { type: 'programChange', deltaTime: 0, programNumber: 3, channel: 0 },
        { type: 'channelAftertouch', deltaTime: 0, amount: 3, channel: 0 },
        { type: 'pitchBend', deltaTime: 0, value: 100, channel: 0 },
        { type: 'sysEx', deltaTime: 0, data: new Uint8Array([1, 2, 0xf7]) } as unknown as MidiEvent,
        on(480, 60),
        off(480, 60),
        END,
      ],
    ]);
    const other = [0x58, 0x59, 0x5a, 0x20, 0, 0, 0, 2, 1, 2];
    const withOther = Uint8Array.from([...bytes.slice(0, 14), ...other, ...bytes.slice(14)]);
    expect(timesOf(readMidiFile(withOther))).toEqual([[60, 0.5, 1]]);
  });
});

it('reads back every file that the app writes', () => {
  fc.assert(
    fc.property(anyItemScore, (score) => {
      const { notes } = readMidiFile(midiFile(score));
      const beat = (60 * score.grouping) / score.tempo;
      const wanted = [score.right, score.left]
        .flatMap((hand) => timed(hand).map(({ keys, at }) => [keys[0]!.midi, (at / 24) * beat]))
        .toSorted(([a, x], [b, y]) => x! - y! || a! - b!);
      const read = notes
        .map(({ midi, on: at }) => [midi, at])
        .toSorted(([a, x], [b, y]) => x! - y! || a! - b!);
      expect(read.map(([midi]) => midi)).toEqual(wanted.map(([midi]) => midi));
      // Times are whole ticks and tempos whole microseconds.
      for (const [i, [, at]] of read.entries()) expect(at).toBeCloseTo(wanted[i]![1]!, 3);
    }),
    { numRuns: 50 },
  );
});

describe('a file that cannot be read says why', () => {
  const plain = written([[on(0, 60), off(480, 60), END]]);
  const changed = (at: number, ...bytes: number[]): Uint8Array =>
    Uint8Array.from(plain, (byte, i) => bytes[i - at] ?? byte);

  it.each<[string, Uint8Array, RegExp]>([
    ['frames of film', changed(12, 0xe7, 0x28), /frames of film/],
    ['format 2', changed(9, 2), /several pieces/],
    ['no ticks', changed(12, 0, 0), /damaged/],
    ['another format', changed(9, 7), /damaged/],
    ['not MIDI', new TextEncoder().encode('RIFF and so on'), /not a MIDI file/],
    ['nothing', new Uint8Array(), /not a MIDI file/],
    ['cut off', plain.slice(0, -3), /stops in the middle/],
    ['a note without status', changed(22, 0, 0x40), /damaged/],
    ['too large', new Uint8Array(LARGEST_MIDI_FILE + 1), /too large/],
  ])('%s', (_, bytes, message) => {
    expect(() => readMidiFile(bytes)).toThrow(MidiFileError);
    expect(() => readMidiFile(bytes)).toThrow(message);
  });
});

it('raises its own error and no other, of 10,000 spoilt files', () => {
  const numbers = seededNumbers(20_261_125);
  const whole = [
    written([
      [tempo(0, 400_000), on(0, 60), pedal(10, 127), off(480, 60), END],
      [on(5, 72), off(70, 72), END],
    ]),
    written(
      [[on(0, 60), on(9, 62), off(480, 60), off(0, 62), END]],
      { format: 0 },
      { running: true },
    ),
  ];
  let [read, refused] = [0, 0];
  for (let i = 0; i < 10_000; i++) {
    const bytes = [...whole[i % 2]!];
    for (let faults = numbers(4); faults >= 0; faults--) {
      const at = numbers(Math.max(1, bytes.length));
      const way = numbers(4);
      if (way === 0) bytes.length = at + 1;
      else if (way === 1)
        bytes.splice(at, numbers(6), ...Array.from({ length: numbers(9) }, () => numbers(256)));
      else bytes[at] = numbers(256);
    }
    try {
      readMidiFile(Uint8Array.from(bytes));
      read += 1;
    } catch (error) {
      if (!(error instanceof MidiFileError)) throw error;
      refused += 1;
    }
  }
  expect(read).toBeGreaterThan(500);
  expect(refused).toBeGreaterThan(500);
});
