/** The exact keys of every item, hand by hand and step by step, on the 88 keys. */
import { type ChordId, chordOf } from './chords';
import { handsOf, type Item, motionOf, type StartingNote, type Way } from './deck';
import { type BlackNames, pitchClassOf, spell } from './spelling';
import { secondsOf, type Tempo } from './tempo';
import { midiOf, type NoteName } from './theory';

/** Two patterns of contrary motion: the formula pattern, or simply outwards and back. */
export type ContraryForm = 'formula' | 'plain';

export interface Key {
  /** 21 (A0) to 108 (C8), middle C = 60. */
  readonly midi: number;
  /** Spelt, with octave: "Bb4". */
  readonly name: NoteName;
  /** Place in the chord, 0 = bottom note. */
  readonly tone: number;
}

/** What sounds at one moment; a hand that rests is null. */
export interface Step {
  readonly right: Key | null;
  readonly left: Key | null;
}

export interface SequenceOptions {
  readonly contraryForm?: ContraryForm;
  readonly blackNames?: BlackNames;
}

/** One hand moves by octaves from where it is: +2 is two octaves up, -2 two down. */
type Path = readonly number[];

interface Course {
  readonly right: Path;
  readonly left: Path;
}

const FORMULA: Course = { right: [2, 2, -2, 2, -2, 2, -2, -2], left: [2, -2, 2, 2, -2, -2, 2, -2] };

function courseOf(way: Way, form: ContraryForm): Course {
  const motion = motionOf(way);
  if (motion === '2') return { right: [2, -2], left: [2, -2] };
  if (motion === '4') return { right: [4, -4], left: [4, -4] };
  return form === 'formula' ? FORMULA : { right: [2, -2], left: [-2, 2] };
}

/**
 * MIDI number of the right hand's first note; the left hand starts an octave lower. Two octaves start between the G
 * below middle C and the F sharp above it, longer courses an octave lower, so that all stay clear of both ends of the
 * keyboard (common practice, no source). The plain contrary form starts on or above middle C, to leave the left hand
 * two octaves below.
 */
function firstRightNote(note: StartingNote, way: Way, form: ContraryForm): number {
  const pitchClass = pitchClassOf(note);
  if (motionOf(way) === 'contrary' && form === 'plain') return 60 + pitchClass;
  const nearMiddleC = (pitchClass >= 7 ? 48 : 60) + pitchClass;
  return motionOf(way) === '2' ? nearMiddleC : nearMiddleC - 12;
}

/** Places along the arpeggio, counted in chord notes from the start: 0, 1, 2 … up and back down. */
function placesOf(path: Path, chordSize: number): readonly number[] {
  const places = [0];
  for (const octaves of path) {
    const direction = Math.sign(octaves);
    for (let i = 0; i < Math.abs(octaves) * chordSize; i++) places.push(places.at(-1)! + direction);
  }
  return places;
}

function keysOf(path: Path, firstMidi: number, names: readonly NoteName[]): readonly Key[] {
  const octave = Math.floor(firstMidi / 12) - 1;
  const tones = names.map((name) => ({ name, midi: midiOf(`${name}${octave}`) }));
  // A letter below the bottom note's (C above A) lies in the next octave of scientific notation.
  const lifts = tones.map(({ midi }) => (midi < firstMidi ? 1 : 0));
  return placesOf(path, names.length).map((place) => {
    const tone = ((place % names.length) + names.length) % names.length;
    const shift = Math.floor(place / names.length) + lifts[tone]!;
    const { name, midi } = tones[tone]!;
    return { midi: midi + 12 * shift, name: `${name}${octave + shift}`, tone };
  });
}

/**
 * The steps of an item from its first note to its last; the top note comes once. Two octaves of a triad have 13 steps,
 * four 25; of a seventh 17 and 33.
 */
export function sequenceOf(item: Item, options: SequenceOptions = {}): readonly Step[] {
  const form = options.contraryForm ?? 'formula';
  const names = spell(item.note, item.chord, options.blackNames);
  const course = courseOf(item.way, form);
  const first = firstRightNote(item.note, item.way, form);
  const hands = handsOf(item.way);
  const right = hands === 'left' ? null : keysOf(course.right, first, names);
  const left = hands === 'right' ? null : keysOf(course.left, first - 12, names);
  return (right ?? left!).map((_, i) => ({ right: right?.[i] ?? null, left: left?.[i] ?? null }));
}

/** Inter-onset intervals from the first note of an item to its last: a triad over four octaves has 24. */
export function intervalCount(chord: ChordId, way: Way, form: ContraryForm = 'formula'): number {
  const octaves = courseOf(way, form).right.reduce((sum, move) => sum + Math.abs(move), 0);
  return octaves * chordOf(chord).intervals.length;
}

/** Intervals of a round: the last note of each arpeggio is the first of the next, so the intervals simply add up. */
export const roundIntervals = (items: readonly Item[], form?: ContraryForm): number =>
  items.reduce((sum, item) => sum + intervalCount(item.chord, item.way, form), 0);

/** Notes of a round, the shared ones counted once. */
export const roundNotes = (items: readonly Item[], form?: ContraryForm): number =>
  items.length === 0 ? 0 : roundIntervals(items, form) + 1;

/** Seconds of a round, from its first note to its last. */
export const roundSeconds = (items: readonly Item[], tempo: Tempo, form?: ContraryForm): number =>
  secondsOf(roundIntervals(items, form), tempo);

/** Whether a piano key is black. */
export const isBlackKey = (midi: number): boolean => [1, 3, 6, 8, 10].includes(midi % 12);
