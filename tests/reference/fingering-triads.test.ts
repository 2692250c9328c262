/** The root-position triads against fingerings as printed. */
import { describe, expect, it } from 'vitest';
import { fingeringsOf } from '../../shared/music/fingering/result';
import { digitsOf, keysOf } from '../fingering/questions';
import { PRINTED_TRIADS as cells } from './printed-triads';

describe('root-position triads', () => {
  it.each(cells)('$note $chord, $hand hand: $usual', ({ note, chord, hand, usual }) => {
    expect(digitsOf(note, chord, hand, 1)).toBe(usual);
  });

  it('48 of 48 are the first that is printed', () => expect(cells).toHaveLength(48));

  it.each(cells.filter(({ alternate }) => alternate))(
    '$note $chord, $hand hand offers $alternate as well',
    ({ note, chord, hand, alternate }) => {
      const { alternatives } = fingeringsOf({ keys: keysOf(note, chord), hand, octaves: 1 });
      expect(alternatives.map(({ fingers }) => fingers.join(''))).toContain(alternate);
    },
  );

  it.each([
    // In more octaves a white start has 1 inside; a black start has there what it has at the top (Evansville, F).
    ['c', 'right', '1231231231235'],
    ['c', 'left', '5421421421421'],
    ['db', 'right', '2124124124124'],
    ['db', 'left', '2142142142142'],
    ['gb', 'right', '1231231231235'],
    ['bb', 'left', '3213213213213'],
  ] as const)('%s major, %s hand, over four octaves', (note, hand, digits) => {
    expect(digitsOf(note, 'major-53', hand, 4)).toBe(digits);
  });
});
