/**
 * Chords of the seventh against the rule of "Fingering Seventh Chords", The Musician, May 1921 (F), and against the
 * chart of the Bellingham Music Teachers Association (F). Both speak of root positions; that inversions and diminished
 * sevenths go the same way is said of the latter, and taken for the former.
 */
import { describe, expect, it } from 'vitest';
import { type ChordId } from '../../shared/music/chords';
import { STARTING_NOTES } from '../../shared/music/deck';
import { isBlackKey } from '../../shared/music/sequence';
import { digitsOf, keysOf } from '../fingering/questions';

const SEVENTHS: readonly ChordId[] = [
  'dominant-7',
  'dominant-65',
  'dominant-43',
  'dominant-42',
  'diminished-7',
];

const cases = STARTING_NOTES.flatMap((note) =>
  SEVENTHS.map((chord) => {
    const keys = keysOf(note, chord);
    const whites = keys.flatMap((key, i) => (isBlackKey(key) ? [] : [i]));
    return { note, chord, first: whites[0]!, last: whites.at(-1)! };
  }),
);

describe('sevenths from a white key', () => {
  it.each(cases.filter(({ first }) => first === 0))('$note $chord', ({ note, chord }) => {
    expect(digitsOf(note, chord, 'right')).toBe('123412345');
    expect(digitsOf(note, chord, 'left')).toBe('543214321');
  });
});

describe('sevenths from a black key', () => {
  const black = cases.filter(({ first }) => first > 0);

  it.each(black)('$note $chord: right hand 2, thumb on the next white key', (one) => {
    const digits = digitsOf(one.note, one.chord, 'right');
    expect(digits.slice(0, one.first + 4)).toBe('234'.slice(0, one.first) + '1234');
    expect(digits[one.first + 4]).toBe('1');
  });

  it.each(black)('$note $chord: left hand, thumb as far up as a white key goes', (one) => {
    const digits = digitsOf(one.note, one.chord, 'left');
    expect(digits.slice(0, one.last + 5)).toBe('4321'.slice(3 - one.last) + '4321');
  });

  it.each([
    [3, '4'],
    [2, '3'],
  ])('left hand, last white note %i (from 0): begins with %s', (note, finger) => {
    const begins = black
      .filter(({ last }) => last === note)
      .map((one) => digitsOf(one.note, one.chord, 'left')[0]);
    expect(new Set(begins)).toEqual(new Set([finger]));
  });
});

describe('the chart', () => {
  it.each(['c', 'g', 'd', 'a', 'e', 'b'] as const)('%s', (note) => {
    expect(digitsOf(note, 'dominant-7', 'right', 2)).toBe('123412345');
    expect(digitsOf(note, 'dominant-7', 'left', 2)).toBe('543214321');
  });

  it('F sharp', () => {
    expect(digitsOf('gb', 'dominant-7', 'right', 2)).toBe('234123412');
    expect(digitsOf('gb', 'dominant-7', 'left', 2)).toBe('432143212');
  });
});
