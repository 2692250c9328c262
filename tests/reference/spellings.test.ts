/**
 * The 132 spellings against a table made independently of this program (own derivation: fewest accidentals, no double
 * ones where avoidable), and against the letter steps that figured bass means in harmony textbooks.
 */
import { Chord, Interval, Note } from 'tonal';
import { describe, expect, it } from 'vitest';
import { CHORD_IDS, type ChordId, CHORDS, chordOf } from '../../shared/music/chords';
import { STARTING_NOTES, type StartingNote } from '../../shared/music/deck';
import { spell } from '../../shared/music/spelling';

const COLUMNS: readonly ChordId[] = [
  'major-53',
  'major-6',
  'major-64',
  'minor-53',
  'minor-6',
  'minor-64',
  'dominant-7',
  'dominant-65',
  'dominant-43',
  'dominant-42',
  'diminished-7',
];

const TABLE = `
c  C-E-G    C-Eb-Ab   C-F-A    C-Eb-G    C-E-A    C-F-Ab   C-E-G-Bb    C-Eb-Gb-Ab  C-Eb-F-A    C-D-F#-A    C-Eb-Gb-Bbb
db Db-F-Ab  C#-E-A    C#-F#-A# C#-E-G#   Db-F-Bb  C#-F#-A  C#-E#-G#-B  C#-E-G-A    C#-E-F#-A#  Db-Eb-G-Bb  C#-E-G-Bb
d  D-F#-A   D-F-Bb    D-G-B    D-F-A     D-F#-B   D-G-Bb   D-F#-A-C    D-F-Ab-Bb   D-F-G-B     D-E-G#-B    D-F-Ab-Cb
eb Eb-G-Bb  D#-F#-B   Eb-Ab-C  D#-F#-A#  Eb-G-C   D#-G#-B  Eb-G-Bb-Db  D#-F#-A-B   Eb-Gb-Ab-C  Eb-F-A-C    D#-F#-A-C
e  E-G#-B   E-G-C     E-A-C#   E-G-B     E-G#-C#  E-A-C    E-G#-B-D    E-G-Bb-C    E-G-A-C#    E-F#-A#-C#  E-G-Bb-Db
f  F-A-C    F-Ab-Db   F-Bb-D   F-Ab-C    F-A-D    F-Bb-Db  F-A-C-Eb    F-Ab-Cb-Db  F-Ab-Bb-D   F-G-B-D     F-Ab-Cb-Ebb
gb F#-A#-C# F#-A-D    F#-B-D#  F#-A-C#   F#-A#-D# F#-B-D   F#-A#-C#-E  F#-A-C-D    F#-A-B-D#   Gb-Ab-C-Eb  F#-A-C-Eb
g  G-B-D    G-Bb-Eb   G-C-E    G-Bb-D    G-B-E    G-C-Eb   G-B-D-F     G-Bb-Db-Eb  G-Bb-C-E    G-A-C#-E    G-Bb-Db-Fb
ab Ab-C-Eb  G#-B-E    Ab-Db-F  G#-B-D#   Ab-C-F   G#-C#-E  Ab-C-Eb-Gb  G#-B-D-E    Ab-Cb-Db-F  Ab-Bb-D-F   G#-B-D-F
a  A-C#-E   A-C-F     A-D-F#   A-C-E     A-C#-F#  A-D-F    A-C#-E-G    A-C-Eb-F    A-C-D-F#    A-B-D#-F#   A-C-Eb-Gb
bb Bb-D-F   A#-C#-F#  Bb-Eb-G  Bb-Db-F   Bb-D-G   A#-D#-F# Bb-D-F-Ab   A#-C#-E-F#  Bb-Db-Eb-G  Bb-C-E-G    A#-C#-E-G
b  B-D#-F#  B-D-G     B-E-G#   B-D-F#    B-D#-G#  B-E-G    B-D#-F#-A   B-D-F-G     B-D-E-G#    B-C#-E#-G#  B-D-F-Ab
`;

/**
 * Chords of F sharp or G flat major and of D sharp or E flat minor, where both names have six accidentals in the key
 * and as many in the chord: the table takes the sharps, the app the name by which the black key is best known.
 */
const EVEN_CELLS: Readonly<Record<string, string>> = {
  'eb minor-53': 'Eb-Gb-Bb',
  'bb major-6': 'Bb-Db-Gb',
  'bb minor-64': 'Bb-Eb-Gb',
};

const cells = TABLE.trim()
  .split('\n')
  .flatMap((line) => {
    const [note, ...spellings] = line.split(/\s+/) as [StartingNote, ...string[]];
    return spellings.map((names, i) => ({ note, chord: COLUMNS[i]!, names }));
  });

describe('spellings against the table', () => {
  it('covers all 132', () => expect(cells).toHaveLength(132));

  it.each(cells)('spells $chord from $note as $names', ({ note, chord, names }) => {
    const expected = EVEN_CELLS[`${note} ${chord}`] ?? names;
    expect(spell(note, chord).join('-')).toBe(expected);
  });
});

/** Figures stand for diatonic steps above the bass, those left out being implied: Kostka & Payne, Tonal Harmony; Aldwell & Schachter, Harmony and Voice Leading (from memory). */
const STEPS_OF_FIGURES: Readonly<Record<string, readonly number[]>> = {
  '5/3': [3, 5],
  '6': [3, 6],
  '6/4': [4, 6],
  '7': [3, 5, 7],
  '6/5': [3, 5, 6],
  '4/3': [3, 4, 6],
  '4/2': [2, 4, 6],
};

describe('letter steps by figured bass', () => {
  it.each(CHORDS)('$name', (chord) => {
    const steps = STEPS_OF_FIGURES[chord.figures.join('/')]!;
    for (const note of STARTING_NOTES) {
      const letters = spell(note, chord.id).map((name) => 'CDEFGAB'.indexOf(name[0]!));
      const numbers = letters.slice(1).map((letter) => ((letter - letters[0]! + 7) % 7) + 1);
      expect(numbers).toEqual(steps);
    }
  });
});

/** Semitones above the bottom note, as every theory book counts them. */
const SEMITONES: Readonly<Record<ChordId, readonly number[]>> = {
  'major-53': [0, 4, 7],
  'minor-53': [0, 3, 7],
  'major-6': [0, 3, 8],
  'minor-6': [0, 4, 9],
  'major-64': [0, 5, 9],
  'minor-64': [0, 5, 8],
  'dominant-7': [0, 4, 7, 10],
  'dominant-65': [0, 3, 6, 8],
  'dominant-43': [0, 3, 5, 9],
  'dominant-42': [0, 2, 6, 9],
  'diminished-7': [0, 3, 6, 9],
};

/** What tonal's own chord detection must find: symbol of the root-position chord, and whether the bass is its root. */
const DETECTED: Readonly<Record<ChordId, { readonly symbol: string; readonly root: number }>> = {
  'major-53': { symbol: 'M', root: 0 },
  'minor-53': { symbol: 'm', root: 0 },
  'major-6': { symbol: 'M', root: 2 },
  'minor-6': { symbol: 'm', root: 2 },
  'major-64': { symbol: 'M', root: 1 },
  'minor-64': { symbol: 'm', root: 1 },
  'dominant-7': { symbol: '7', root: 0 },
  'dominant-65': { symbol: '7', root: 3 },
  'dominant-43': { symbol: '7', root: 2 },
  'dominant-42': { symbol: '7', root: 1 },
  'diminished-7': { symbol: 'dim7', root: 0 },
};

describe('sound and chord by tonal', () => {
  const all = STARTING_NOTES.flatMap((note) => CHORD_IDS.map((chord) => ({ note, chord })));

  it.each(all)('$chord from $note has the right semitones and is detected', ({ note, chord }) => {
    const names = spell(note, chord);
    const bottom = Note.chroma(names[0]!)!;
    expect(names.map((name) => (Note.chroma(name)! - bottom + 12) % 12)).toEqual(SEMITONES[chord]);
    const { symbol, root } = DETECTED[chord];
    const expected = names[root]! + symbol + (root === 0 ? '' : `/${names[0]}`);
    expect(Chord.detect([...names])).toContain(expected);
  });

  it.each(CHORDS)('$name: intervals sum up as tonal counts them', ({ id, intervals }) => {
    expect(intervals.map((name) => Interval.semitones(name))).toEqual(SEMITONES[id]);
    expect(chordOf(id).intervals).toBe(intervals);
  });
});
