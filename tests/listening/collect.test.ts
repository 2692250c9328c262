import { describe, expect, it } from 'vitest';
import { collecting } from '../../shared/listening/collect';
import { isPedalled, sliceOf } from '../../shared/listening/take';
import { seededRandom } from './performer';

const [ON, OFF, CONTROL] = [0x90, 0x80, 0xb0];
const takeOf = (messages: readonly (readonly [number, ...number[]])[]) => {
  const collector = collecting('midi');
  for (const [at, ...bytes] of messages) collector.add(bytes, at);
  return collector.take();
};

describe('messages become notes', () => {
  it('with a note-on of velocity 0 as a note-off (MIDI 1.0)', () => {
    const { notes } = takeOf([
      [0, ON, 60, 80],
      [1, ON, 60, 0],
      [2, ON, 62, 50],
      [3, OFF, 62, 64],
    ]);
    expect(notes.map(({ midi, on, off, loudness }) => [midi, on, off, loudness])).toEqual([
      [60, 0, 1, 80],
      [62, 2, 3, 50],
    ]);
  });

  it('each key and channel for itself; struck again, a key ends the note before', () => {
    const { notes } = takeOf([
      [0, ON, 60, 80],
      [0.5, ON + 1, 60, 70],
      [1, ON, 60, 60],
      [2, OFF + 1, 60, 0],
      [3, OFF, 60, 0],
    ]);
    expect(notes.map(({ on, off }) => [on, off])).toEqual([
      [0, 1],
      [0.5, 2],
      [1, 3],
    ]);
  });

  it('that end where all notes are switched off, and otherwise stay open', () => {
    const { notes } = takeOf([
      [0, ON, 60, 80],
      [1, ON + 1, 64, 80],
      [2, CONTROL, 123, 0],
    ]);
    expect(notes.map(({ off }) => off)).toEqual([2, null]);
  });
});

describe('the sustain pedal', () => {
  it('is kept beside the notes and does not lengthen them', () => {
    const take = takeOf([
      [0, ON, 60, 80],
      [0.5, CONTROL, 64, 127],
      [0.6, CONTROL, 64, 90],
      [1, OFF, 60, 0],
      [2, CONTROL, 64, 20],
    ]);
    expect(take.pedal).toEqual([{ from: 0.5, to: 2 }]);
    expect(take.notes[0]!.off).toBe(1);
    // No note began while it was down.
    expect(isPedalled(take)).toBe(false);
    expect(isPedalled({ ...take, pedal: null })).toBeNull();
  });

  it('stays with the part of a take in which it was down', () => {
    const take = takeOf([
      [0, CONTROL, 64, 127],
      [1, ON, 60, 80],
      [2, CONTROL, 64, 0],
      [5, ON, 62, 80],
    ]);
    expect(isPedalled(sliceOf(take, 0, 3))).toBe(true);
    expect(isPedalled(sliceOf(take, 3, 6))).toBe(false);
    expect(sliceOf(take, 3, 6).notes.map(({ midi }) => midi)).toEqual([62]);
  });
});

it('makes nothing of other messages, and never throws', () => {
  const random = seededRandom(7);
  const collector = collecting('midi');
  for (let i = 0; i < 20_000; i++) {
    const bytes = Array.from({ length: Math.floor(5 * random()) }, () =>
      Math.floor(256 * random()),
    );
    collector.add(bytes, i);
  }
  const { notes } = collector.take();
  expect(notes.length).toBeGreaterThan(100);
  for (const { midi, on, off, loudness } of notes) {
    expect(midi >= 0 && midi <= 127 && loudness! >= 1 && loudness! <= 127).toBe(true);
    expect(off === null || off > on).toBe(true);
  }
});
