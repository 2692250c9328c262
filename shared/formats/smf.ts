/**
 * A score as a Standard MIDI File, to be opened in a sequencer or played by a digital piano. Format 1: the tempo, then
 * one track a hand (MIDI Manufacturers Association, Standard MIDI Files 1.0, RP-001; MIDI 1.0 for what they contain).
 */
import { placedNotes, type PlacedNote } from '../music/engraving/placed';
import { type Touch, touchesOf } from '../music/pedal';
import { lengthOf, type Sound, soundsOf } from '../music/playing';
import { PARTS_OF_BEAT, type Score } from '../music/score';

const TICKS_PER_BEAT = 480;
const TICKS_PER_PART = TICKS_PER_BEAT / PARTS_OF_BEAT;

const NOTE_OFF = 0x80;
const NOTE_ON = 0x90;
const CONTROLLER = 0xb0;
const PROGRAM = 0xc0;
const SUSTAIN = 64;
const PIANO = 0;

/** Velocities: mezzo forte, and an accent that stands out from it. */
const LOUDNESS = 72;
const ACCENT = 96;
/** How fast a key comes up; most instruments pay no heed. */
const RELEASE = 64;

const META = 0xff;
const TEXT = 0x01;
const TRACK_NAME = 0x03;
const END_OF_TRACK = 0x2f;
const SET_TEMPO = 0x51;
const TIME_SIGNATURE = 0x58;
const KEY_SIGNATURE = 0x59;

/** What comes first where several events fall together: a key must be up before it can go down again. */
const [FIRST, RELEASES, BEFORE_NOTES, NOTES, LAST] = [0, 1, 2, 3, 4];

interface MidiEvent {
  /** Ticks from the beginning. */
  readonly at: number;
  readonly order: number;
  readonly bytes: readonly number[];
}

/** Big-endian, as all numbers of a file are. */
const bigEndian = (value: number, size: number): readonly number[] =>
  Array.from({ length: size }, (_, i) => Math.floor(value / 256 ** (size - 1 - i)) % 256);

/** Seven bits a byte, the highest bit set in all but the last. */
function variableLength(value: number): readonly number[] {
  const bytes = [value % 128];
  for (let rest = Math.floor(value / 128); rest > 0; rest = Math.floor(rest / 128)) {
    bytes.unshift((rest % 128) + 128);
  }
  return bytes;
}

/** Text in a file is ASCII, by the specification: signs of music become letters, the rest a question mark. */
const ascii = (words: string): readonly number[] =>
  Array.from(words.replaceAll('\u266F', '#').replaceAll('\u266D', 'b'), (sign) => {
    const code = sign.codePointAt(0)!;
    return code >= 0x20 && code < 0x7f ? code : 0x3f;
  });

const meta = (at: number, order: number, type: number, data: readonly number[]): MidiEvent => ({
  at,
  order,
  bytes: [META, type, ...variableLength(data.length), ...data],
});

const chunk = (id: string, data: readonly number[]): readonly number[] => [
  ...ascii(id),
  ...bigEndian(data.length, 4),
  ...data,
];

/** `length` in ticks: a track goes on to its end, even if the last of it is a rest. */
function track(name: string, length: number, events: readonly MidiEvent[]): readonly number[] {
  const ordered = [meta(0, FIRST, TRACK_NAME, ascii(name)), ...events].toSorted(
    (a, b) => a.at - b.at || a.order - b.order,
  );
  const end = meta(Math.max(length, ordered.at(-1)!.at), LAST, END_OF_TRACK, []);
  let now = 0;
  const data = [...ordered, end].flatMap(({ at, bytes }) => {
    const delta = at - now;
    now = at;
    return [...variableLength(delta), ...bytes];
  });
  return chunk('MTrk', data);
}

/** Sharps, or flats as a negative byte, then 0 for major, 1 for minor; no key is told as C major, as there is no other way. */
const keyEvents = ({ joins, keySignatures = [] }: Score): readonly MidiEvent[] =>
  keySignatures.map((key, i) => {
    const at = (i === 0 ? 0 : joins[i - 1]!) * TICKS_PER_PART;
    return meta(at, FIRST, KEY_SIGNATURE, [
      (256 + (key?.fifths ?? 0)) % 256,
      key?.mode === 'minor' ? 1 : 0,
    ]);
  });

function tempoTrack(score: Score): readonly number[] {
  const { title, tempo, grouping } = score;
  const microseconds = Math.round((60_000_000 * grouping) / tempo);
  return track(title, 0, [
    meta(0, FIRST, SET_TEMPO, bigEndian(microseconds, 3)),
    // Four crotchets (2 to the power of 2), a click every crotchet (24 MIDI clocks), 8 demisemiquavers in it.
    meta(0, FIRST, TIME_SIGNATURE, [4, 2, 24, 8]),
    ...keyEvents(score),
  ]);
}

/** SMF has no fingering, so it is told in words, where the note begins. */
function fingerText({ fingers, place }: PlacedNote): readonly MidiEvent[] {
  const known = fingers.filter((finger) => finger !== null);
  if (known.length === 0) return [];
  const words = `${known.length === 1 ? 'finger' : 'fingers'} ${known.join(' ')}`;
  return [meta(place * TICKS_PER_PART, BEFORE_NOTES, TEXT, ascii(words))];
}

function soundEvents(sound: Sound, channel: number): readonly MidiEvent[] {
  const { midi, start, end, isAccented } = sound;
  const velocity = isAccented ? ACCENT : LOUDNESS;
  return [
    { at: start * TICKS_PER_PART, order: NOTES, bytes: [NOTE_ON + channel, midi, velocity] },
    { at: end * TICKS_PER_PART, order: RELEASES, bytes: [NOTE_OFF + channel, midi, RELEASE] },
  ];
}

function pedalEvents(touches: readonly Touch[], channel: number): readonly MidiEvent[] {
  return touches.flatMap(({ at, length }) => {
    const down = at * TICKS_PER_PART;
    const up = (at + length) * TICKS_PER_PART;
    return [
      { at: down, order: BEFORE_NOTES, bytes: [CONTROLLER + channel, SUSTAIN, 127] },
      { at: up, order: RELEASES, bytes: [CONTROLLER + channel, SUSTAIN, 0] },
    ];
  });
}

function handTrack(score: Score, hand: 'right' | 'left'): readonly number[] {
  // A channel for each hand, so that one may let go of a key that the other holds.
  const channel = hand === 'right' ? 0 : 1;
  const notes = placedNotes(score, hand);
  const length = lengthOf(score) * TICKS_PER_PART;
  return track(hand === 'right' ? 'Right hand' : 'Left hand', length, [
    { at: 0, order: FIRST, bytes: [PROGRAM + channel, PIANO] },
    ...notes.flatMap(fingerText),
    ...soundsOf(score, hand).flatMap((sound) => soundEvents(sound, channel)),
    // A hand that rests needs no pedal of its own.
    ...(notes.length === 0 ? [] : pedalEvents(touchesOf(score), channel)),
  ]);
}

/**
 * A score as the bytes of a Standard MIDI File. Notes last until the next begins, or longer where they overlap; fingers
 * are text events. Titles are written in ASCII.
 */
export function midiFile(score: Score): Uint8Array<ArrayBuffer> {
  const tracks = [tempoTrack(score), handTrack(score, 'right'), handTrack(score, 'left')];
  const header = [1, tracks.length, TICKS_PER_BEAT].flatMap((value) => bigEndian(value, 2));
  return Uint8Array.from([...chunk('MThd', header), ...tracks.flat()]);
}
