/** A recording as a file, for the screen that judges one. */
import { type MidiData, type MidiEvent, writeMidi } from 'midi-file';
import type { Take } from '../../shared/listening/take';

/** Takes one after another, with three seconds between, as a MIDI file by an independent library: midi-file. */
export function midiFileOf(takes: readonly Take[]): Uint8Array {
  const events: { at: number; event: Partial<MidiEvent> }[] = [];
  let start = 0;
  for (const { notes } of takes) {
    for (const { midi: noteNumber, on, off, loudness } of notes) {
      const note = { noteNumber, channel: 0 };
      events.push({ at: start + on, event: { ...note, type: 'noteOn', velocity: loudness! } });
      events.push({ at: start + off!, event: { ...note, type: 'noteOff', velocity: 0 } });
    }
    start += notes.at(-1)!.on + 3;
  }
  let now = 0;
  // 480 ticks in a crotchet of half a second.
  const track = events
    .toSorted((a, b) => a.at - b.at)
    .map(({ at, event }) => {
      const deltaTime = Math.round(at * 960) - now;
      now += deltaTime;
      return { ...event, deltaTime };
    });
  const header = { format: 0, numTracks: 1, ticksPerBeat: 480 };
  return Uint8Array.from(writeMidi({ header, tracks: [track] } as unknown as MidiData));
}
