/**
 * Key signatures against the circle of fifths as every harmony textbook prints it (Kostka and Payne, Tonal Harmony,
 * chapter 1; Aldwell and Schachter, Harmony and Voice Leading, chapter 1; both from memory), and against the key
 * dictionary of an independent library.
 */
import { Key, Note } from 'tonal';
import { describe, expect, it } from 'vitest';
import { CHORDS } from '../../shared/music/chords';
import { STARTING_NOTES } from '../../shared/music/deck';
import { alterInKey, stepsOfKey } from '../../shared/music/engraving/signature';
import { ownKeyOf, spell } from '../../shared/music/spelling';

/** From seven flats to seven sharps. */
const CIRCLE = {
  major: 'Cb Gb Db Ab Eb Bb F C G D A E B F# C#'.split(' '),
  minor: 'Ab Eb Bb F C G D A E B F# C# G# D# A#'.split(' '),
};

/** The tonic by the words of harmony, from the notes alone: by the root of the chord. */
function tonicOf(names: readonly string[], kind: string): string {
  const rootAt = { '6': -1, '64': 1, '65': -1, '43': -2, '42': 1 }[kind.split('-')[1]!] ?? 0;
  const root = names.at(rootAt)!;
  if (kind.startsWith('dominant')) return Note.transpose(root, '4P');
  return kind.startsWith('diminished') ? Note.transpose(root, '2m') : root;
}

const cells = STARTING_NOTES.flatMap((note) => CHORDS.map(({ id, key }) => ({ note, id, key })));

describe('the own key of a chord', () => {
  it.each(cells)('of $id from $note is that of the textbooks', ({ note, id, key: { mode } }) => {
    const names = spell(note, id);
    const tonic = tonicOf(names, id);
    const place = CIRCLE[mode].indexOf(tonic);
    const found = ownKeyOf(note, id);
    expect(found).toEqual(place === -1 ? null : { fifths: place - 7, mode });
    if (found === null) return;
    const known = mode === 'major' ? Key.majorKey(tonic) : Key.minorKey(tonic);
    expect(found.fifths).toBe(known.alteration);
    // All its notes are in the key, save the raised leading note of minor.
    const strange = names.filter((name) => alterInKey(name, found.fifths) !== Note.get(name).alt);
    expect(strange).toEqual(id === 'diminished-7' ? [names[0]] : []);
  });

  it('is none where it would need more than seven signs', () => {
    const none = cells.filter(({ note, id }) => ownKeyOf(note, id) === null);
    expect(none.map(({ note, id }) => `${note} ${id}`)).toEqual([
      'c diminished-7',
      'f diminished-7',
    ]);
  });
});

/** The letter and octave so many steps of the white keys above another. */
const stepsAbove = (letter: string, octave: number, steps: number): string => {
  const white = 'CDEFGAB'.indexOf(letter) + steps;
  return `${'CDEFGAB'[((white % 7) + 7) % 7]}${octave + Math.floor(white / 7)}`;
};
const letters = (fifths: number, clef: 'treble' | 'bass') =>
  stepsOfKey(fifths, clef).map((step) =>
    clef === 'treble' ? stepsAbove('E', 4, step) : stepsAbove('G', 2, step),
  );

describe('the signs of a key', () => {
  it('stand where all books put them, the first sharp on the top line, the first flat in the middle', () => {
    expect(letters(7, 'treble').join(' ')).toBe('F5 C5 G5 D5 A4 E5 B4');
    expect(letters(-7, 'treble').join(' ')).toBe('B4 E5 A4 D5 G4 C5 F4');
    expect(letters(3, 'bass').join(' ')).toBe('F3 C3 G3');
    expect(letters(-2, 'bass').join(' ')).toBe('B2 E3');
    expect(letters(0, 'bass')).toEqual([]);
  });
});
