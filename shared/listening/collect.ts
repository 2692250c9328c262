/** Makes a take from the messages of a MIDI keyboard or the events of a MIDI file, in the order of their times. */
import type { TakeSource } from '../log/run-take';
import type { HeardNote, PedalSpan, Take } from './take';

const NOTE_OFF = 0x80;
const NOTE_ON = 0x90;
const CONTROLLER = 0xb0;
const SUSTAIN = 64;
/** Controllers that end all notes (MIDI 1.0, channel mode messages). */
const ALL_SOUND_OFF = 120;
const ALL_NOTES_OFF = 123;
/** From this value a pedal is down (MIDI 1.0: 0 to 63 off, 64 to 127 on). */
const DOWN = 64;

type Sounding = Omit<HeardNote, 'off'> & { off: number | null };

export interface Collector {
  /** One message with its status byte, at a time in seconds. What is not about notes or the pedal is passed over. */
  add(message: ArrayLike<number>, at: number): void;
  /** Whether a key is down. */
  isDown(midi: number): boolean;
  take(): Take;
}

export function collecting(source: TakeSource): Collector {
  const notes: Sounding[] = [];
  const pedal: { from: number; to: number | null }[] = [];
  /** By channel and key: a file may give each hand a channel of its own. */
  const down = new Map<number, Sounding>();

  const lift = (key: number, at: number) => {
    const note = down.get(key);
    if (note !== undefined) note.off = at;
    down.delete(key);
  };
  const press = (key: number, loudness: number, at: number) => {
    lift(key, at);
    const note: Sounding = { midi: key % 128, on: at, off: null, loudness, confidence: 1 };
    notes.push(note);
    down.set(key, note);
  };
  const control = (channel: number, controller: number, value: number, at: number) => {
    if (controller === SUSTAIN) {
      const last = pedal.at(-1);
      const isHeld = last?.to === null;
      if (value >= DOWN && !isHeld) pedal.push({ from: at, to: null });
      if (value < DOWN && isHeld) last.to = at;
    }
    if (controller !== ALL_SOUND_OFF && controller < ALL_NOTES_OFF) return;
    for (const key of down.keys()) if (key >> 7 === channel) lift(key, at);
  };

  return {
    add: (message, at) => {
      const [status = 0, first = 0, second = 0] = Array.from(message).slice(0, 3);
      // A message of the wrong form says nothing.
      if (message.length < 3 || first > 127 || second > 127) return;
      const channel = status & 0x0f;
      const key = channel * 128 + first;
      const kind = status & 0xf0;
      if (kind === NOTE_ON && second > 0) press(key, second, at);
      else if (kind === NOTE_ON || kind === NOTE_OFF) lift(key, at);
      else if (kind === CONTROLLER) control(channel, first, second, at);
    },
    isDown: (midi) => [...down.values()].some((note) => note.midi === midi),
    take: () => ({
      source,
      notes: notes.map((note): HeardNote => ({ ...note })).toSorted((a, b) => a.on - b.on),
      pedal: pedal.map((span): PedalSpan => ({ ...span })),
      hasTimeOfEachHand: true,
    }),
  };
}
