/** The eleven chords that are played from one bottom note, in the order of a round. */
import type { IntervalName } from './theory';

export const CHORD_IDS = [
  'major-53',
  'minor-53',
  'major-6',
  'minor-6',
  'major-64',
  'minor-64',
  'dominant-7',
  'dominant-65',
  'dominant-43',
  'dominant-42',
  'diminished-7',
] as const;

export type ChordId = (typeof CHORD_IDS)[number];

export interface Chord {
  readonly id: ChordId;
  readonly name: string;
  /** Fits a column heading: figured bass after the kind of chord. */
  readonly shortName: string;
  /** Figured bass as printed, top figure first. */
  readonly figures: readonly string[];
  /** From the bottom note upwards, the bottom note included. */
  readonly intervals: readonly IntervalName[];
  /** From the bottom note up to the tonic of the key that the chord belongs to, and that key's mode. */
  readonly key: { readonly tonic: IntervalName; readonly mode: 'major' | 'minor' };
}

/**
 * Figured bass and letter steps: harmony textbooks, the same in all (see tests/reference/figured-bass.test.ts).
 * A triad belongs to the key of its root, a dominant seventh to the key it resolves to, a diminished seventh to the
 * minor key whose leading note is its bottom note.
 */
export const CHORDS: readonly Chord[] = [
  {
    id: 'major-53',
    name: 'major triad, root position',
    shortName: 'major 5/3',
    figures: ['5', '3'],
    intervals: ['1P', '3M', '5P'],
    key: { tonic: '1P', mode: 'major' },
  },
  {
    id: 'minor-53',
    name: 'minor triad, root position',
    shortName: 'minor 5/3',
    figures: ['5', '3'],
    intervals: ['1P', '3m', '5P'],
    key: { tonic: '1P', mode: 'minor' },
  },
  {
    id: 'major-6',
    name: 'major triad, first inversion',
    shortName: 'major 6',
    figures: ['6'],
    intervals: ['1P', '3m', '6m'],
    key: { tonic: '6m', mode: 'major' },
  },
  {
    id: 'minor-6',
    name: 'minor triad, first inversion',
    shortName: 'minor 6',
    figures: ['6'],
    intervals: ['1P', '3M', '6M'],
    key: { tonic: '6M', mode: 'minor' },
  },
  {
    id: 'major-64',
    name: 'major triad, second inversion',
    shortName: 'major 6/4',
    figures: ['6', '4'],
    intervals: ['1P', '4P', '6M'],
    key: { tonic: '4P', mode: 'major' },
  },
  {
    id: 'minor-64',
    name: 'minor triad, second inversion',
    shortName: 'minor 6/4',
    figures: ['6', '4'],
    intervals: ['1P', '4P', '6m'],
    key: { tonic: '4P', mode: 'minor' },
  },
  {
    id: 'dominant-7',
    name: 'dominant seventh, root position',
    shortName: 'dominant 7',
    figures: ['7'],
    intervals: ['1P', '3M', '5P', '7m'],
    key: { tonic: '4P', mode: 'major' },
  },
  {
    id: 'dominant-65',
    name: 'dominant seventh, first inversion',
    shortName: 'dominant 6/5',
    figures: ['6', '5'],
    intervals: ['1P', '3m', '5d', '6m'],
    key: { tonic: '2m', mode: 'major' },
  },
  {
    id: 'dominant-43',
    name: 'dominant seventh, second inversion',
    shortName: 'dominant 4/3',
    figures: ['4', '3'],
    intervals: ['1P', '3m', '4P', '6M'],
    key: { tonic: '7m', mode: 'major' },
  },
  {
    id: 'dominant-42',
    name: 'dominant seventh, third inversion',
    shortName: 'dominant 4/2',
    figures: ['4', '2'],
    intervals: ['1P', '2M', '4A', '6M'],
    key: { tonic: '5P', mode: 'major' },
  },
  {
    id: 'diminished-7',
    name: 'diminished seventh',
    shortName: 'diminished 7',
    figures: ['7'],
    intervals: ['1P', '3m', '5d', '7d'],
    key: { tonic: '2m', mode: 'minor' },
  },
];

const byId = new Map(CHORDS.map((chord) => [chord.id, chord]));

export const chordOf = (id: ChordId): Chord => byId.get(id)!;
