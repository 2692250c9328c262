/**
 * Standard MIDI Files 1.0 (RP-001), read back by an independent parser. The bytes of tempo and end of track are those
 * that the specification prints.
 */
import { type MidiEvent, parseMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import { midiFile } from '../../shared/formats/smf';
import { itemOf } from '../../shared/music/deck';
import type { Score, ScoreNote } from '../../shared/music/score';
import { scoreOf } from '../../shared/music/score-of';
import { fc } from '../learning/property';
import {
  anyDrill,
  anyItemScore,
  anyRoundScore,
  fingered,
  note,
  OPTIONS,
  score,
  timed,
} from './scores';

const TICKS = 480 / 24;

type Timed = MidiEvent & { readonly at: number };

/** The events of one track with the ticks at which they come. */
function eventsOf(made: Score, track: number): readonly Timed[] {
  let at = 0;
  return parseMidi(midiFile(made)).tracks[track]!.map((event) => {
    at += event.deltaTime;
    return { ...event, at };
  });
}

interface Sound {
  readonly midi: number;
  readonly on: number;
  readonly off: number;
  readonly velocity: number;
}

/** What sounds in a track, in order of beginning. Throws where a key goes down twice, or never comes up. */
function soundsIn(made: Score, track: number): readonly Sound[] {
  const down = new Map<number, { readonly at: number; readonly velocity: number }>();
  const sounds: Sound[] = [];
  for (const event of eventsOf(made, track)) {
    if (event.type === 'noteOn') {
      if (down.has(event.noteNumber)) throw new Error(`${event.noteNumber} is down already`);
      down.set(event.noteNumber, event);
    } else if (event.type === 'noteOff') {
      const { at, velocity } = down.get(event.noteNumber)!;
      down.delete(event.noteNumber);
      sounds.push({ midi: event.noteNumber, on: at, off: event.at, velocity });
    }
  }
  if (down.size > 0) throw new Error('a key stays down');
  return sounds.toSorted((a, b) => a.on - b.on || a.midi - b.midi);
}

const sounding = (notes: readonly ScoreNote[]) =>
  timed(notes)
    .filter(({ isSilent }) => !isSilent)
    .flatMap(({ keys, at, length, isAccented }) =>
      keys.map(({ midi }) => ({
        midi,
        on: at * TICKS,
        least: (at + length) * TICKS,
        velocity: isAccented ? 96 : 72,
      })),
    );

/** All notes are there at their times; each lasts as long as it is written, or longer by its overlap. */
function expectSound(made: Score): void {
  const { header, tracks } = parseMidi(midiFile(made));
  expect(header).toMatchObject({ format: 1, numTracks: 3, ticksPerBeat: 480 });
  expect(tracks).toHaveLength(3);
  for (const [track, notes] of [made.right, made.left].entries()) {
    const heard = soundsIn(made, track + 1);
    const wanted = sounding(notes).toSorted((a, b) => a.on - b.on || a.midi - b.midi);
    expect(heard.map(({ midi, on, velocity }) => ({ midi, on, velocity }))).toEqual(
      wanted.map(({ midi, on, velocity }) => ({ midi, on, velocity })),
    );
    for (const [i, { off }] of heard.entries()) {
      const extra = off - wanted[i]!.least;
      expect(extra).toBeGreaterThanOrEqual(0);
      expect(extra).toBeLessThanOrEqual(2 * TICKS);
    }
  }
}

const pedal = (made: Score, track: number): readonly string[] =>
  eventsOf(made, track).flatMap((event) =>
    event.type === 'controller' ? [`${event.controllerType}=${event.value}@${event.at}`] : [],
  );
const texts = (made: Score, track: number): readonly string[] =>
  eventsOf(made, track).flatMap((event) =>
    event.type === 'text' ? [`${event.text}@${event.at}`] : [],
  );

describe('a Standard MIDI File', () => {
  it('sounds as written, for items in threes and fours', () => {
    fc.assert(fc.property(anyItemScore, expectSound));
  });

  it('sounds as written, for rounds', () => {
    fc.assert(fc.property(anyRoundScore, expectSound), { numRuns: 20 });
  });

  it('sounds as written, for whatever a drill may hold', () => {
    fc.assert(fc.property(anyDrill, expectSound));
  });

  it('has the bytes of the specification', () => {
    const bytes = [...midiFile(score([note('C4', 24)]))];
    const hex = bytes.map((byte) => byte.toString(16).padStart(2, '0')).join(' ');
    // "MThd", 6 bytes: format 1, 3 tracks, 480 ticks.
    expect(hex).toMatch(/^4d 54 68 64 00 00 00 06 00 01 00 03 01 e0 4d 54 72 6b/);
    // 60 crotchets a minute are 1,000,000 microseconds each, in bars of 4/4.
    expect(hex).toContain('00 ff 51 03 0f 42 40');
    expect(hex).toContain('00 ff 58 04 04 02 18 08');
    // Middle C for 480 ticks, which take two bytes; then the end of the track.
    expect(hex).toContain('00 90 3c 48 83 60 80 3c 40 00 ff 2f 00');
  });

  it('has the tempo of the beat in threes, too', () => {
    const made = { ...score([note('C4', 8)]), tempo: 360, grouping: 3 as const };
    const tempo = eventsOf(made, 0).find(({ type }) => type === 'setTempo');
    expect(tempo).toMatchObject({ microsecondsPerBeat: 500_000 });
  });

  it('tells the key of each arpeggio, flats as a negative number', () => {
    const items = (['d.minor-53.right.2', 'd.major-6.right.2'] as const).map(itemOf);
    const made = scoreOf(items, { ...OPTIONS, hasKeySignatures: true });
    const keys = eventsOf(made, 0).filter(({ type }) => type === 'keySignature');
    expect(keys).toMatchObject([
      { at: 0, key: -1, scale: 1 },
      { at: 72 * TICKS, key: -2, scale: 0 },
    ]);
    // The specification: FF 59 02 sf mi.
    const hex = [...midiFile(made)].map((byte) => byte.toString(16).padStart(2, '0')).join(' ');
    expect(hex).toContain('ff 59 02 ff 01');
    expect(hex).toContain('ff 59 02 fe 00');
  });

  it('names itself, its hands and the piano', () => {
    const made = { ...score([note('C4', 24)]), title: 'F\u266F major \u2013 \u00E9tude' };
    const names = [0, 1, 2].map((track) => eventsOf(made, track)[0]);
    expect(names).toMatchObject([
      { type: 'trackName', text: 'F# major ? ?tude' },
      { type: 'trackName', text: 'Right hand' },
      { type: 'trackName', text: 'Left hand' },
    ]);
    const programs = [1, 2].flatMap((track) =>
      eventsOf(made, track).filter(({ type }) => type === 'programChange'),
    );
    expect(programs).toMatchObject([
      { channel: 0, programNumber: 0 },
      { channel: 1, programNumber: 0 },
    ]);
  });

  it('holds a key into the next note, but not into its own repetition', () => {
    const notes = [note('C4', 6, { overlap: 2 }), note('D4', 6, { overlap: 2 }), note('D4', 6)];
    expect(soundsIn(score(notes), 1).map(({ on, off }) => [on, off])).toEqual([
      [0, 160],
      [120, 240],
      [240, 360],
    ]);
  });

  it('keeps silent keys silent, and tells fingers in words', () => {
    const notes = [
      fingered('C4 E4', 24, 1, 2),
      { ...fingered('G4', 24, 5), isSilent: true },
      note('C5', 24),
    ];
    expect(soundsIn(score(notes), 1).map(({ midi }) => midi)).toEqual([60, 64, 72]);
    expect(texts(score(notes), 1)).toEqual(['fingers 1 2@0', 'finger 5@480']);
  });

  it('catches a note with the pedal and lifts it when the next has begun, in both hands at once', () => {
    const right = [note('C4', 6, { hasPedal: true }), note('E4', 6), note('G4', 12)];
    const left = [note('C3', 6), note('E3', 6, { hasPedal: true }), note('G3', 12)];
    const touches = ['64=127@60', '64=0@150', '64=127@180', '64=0@300'];
    expect(pedal(score(right, left), 1)).toEqual(touches);
    expect(pedal(score(right, left), 2)).toEqual(touches);
    expect(pedal(score(right), 2)).toEqual([]);
    const dry = scoreOf([itemOf('d.major-53.together.2')], { ...OPTIONS, pedal: false });
    expect(pedal(dry, 1)).toEqual([]);
  });

  it('joins the two notes of every position change of a hand, and catches nothing earlier', () => {
    fc.assert(
      fc.property(anyItemScore, (made) => {
        // The touches of the other hand would come between.
        fc.pre(made.right.length === 0 || made.left.length === 0);
        const hand = made.right.length > 0 ? 'right' : 'left';
        const track = hand === 'right' ? 1 : 2;
        const sounds = soundsIn(made, track);
        const moves = pedal(made, track).map((move) => move.split('@').map(Number));
        const downAt = (at: number): boolean =>
          (pedal(made, track).findLast((_, i) => moves[i]![1]! <= at) ?? '64=0').startsWith(
            '64=127',
          );
        made[hand].forEach(({ hasPedal }, i) => {
          if (!hasPedal) return;
          const [before, arrival] = [sounds[i]!, sounds[i + 1]!];
          // Not before the note sounds, so that nothing earlier is caught, unless that came by a change as well.
          expect(downAt(before.on)).toBe(made[hand][i - 1]?.hasPedal ?? false);
          expect([before.off - 1, arrival.on].map(downAt)).toEqual([true, true]);
          expect(downAt(arrival.on + (arrival.off - arrival.on) / 4)).toBe(false);
        });
      }),
      { numRuns: 30 },
    );
  });

  it('goes on to the end of a last rest', () => {
    const end = eventsOf(score([note('C4', 24), note('', 24)]), 1).at(-1);
    expect(end).toMatchObject({ type: 'endOfTrack', at: 960 });
  });
});
