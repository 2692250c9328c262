/**
 * The root-position triads against fingerings as printed (F): Evansville and Kelley's scale pages, musicandhealth.co.uk,
 * blogitnow 2005/12, music4vip.eu, arioso7 and pianoscience. One octave and the top note, ascending; in brackets what
 * some of them print instead.
 */
import { describe, expect, it } from 'vitest';
import type { StartingNote } from '../../shared/music/deck';
import { fingeringsOf } from '../../shared/music/fingering/result';
import { digitsOf, keysOf } from '../fingering/questions';

const PRINTED = `
c  | 1235        | 1235 | 5421 (5321) | 5421 (5321)
db | 2124 (4124) | 2124 | 2142        | 2142
d  | 1235        | 1235 | 5321 (5421) | 5421
eb | 2124 (4124) | 1235 | 2142        | 5421
e  | 1235        | 1235 | 5321 (5421) | 5421
f  | 1235        | 1235 | 5421 (5321) | 5421 (5321)
gb | 1235        | 2124 | 5321 (5421) | 2142
g  | 1235        | 1235 | 5421 (5321) | 5421 (5321)
ab | 2124 (4124) | 2124 | 2142        | 2142
a  | 1235        | 1235 | 5321 (5421) | 5421
bb | 2124 (4124) | 2312 | 3213        | 3213
b  | 1235        | 1235 | 5321 (5421) | 5421`;

const COLUMNS = [
  ['major-53', 'right'],
  ['minor-53', 'right'],
  ['major-53', 'left'],
  ['minor-53', 'left'],
] as const;

const cells = PRINTED.trim()
  .split('\n')
  .flatMap((line) => {
    const [note, ...texts] = line.split('|').map((text) => text.trim());
    return texts.map((text, column) => {
      const [chord, hand] = COLUMNS[column]!;
      const [usual, alternate] = text.match(/\d+/g)!;
      return { note: note as StartingNote, chord, hand, usual: usual!, alternate };
    });
  });

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
