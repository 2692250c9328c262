/**
 * The fingerings of root-position triads as printed (F): Evansville and Kelley's scale pages, musicandhealth.co.uk,
 * blogitnow 2005/12, music4vip.eu, arioso7 and pianoscience. One octave and the top note, ascending; in brackets what
 * some of them print instead.
 */
import type { StartingNote } from '../../shared/music/deck';

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

export const PRINTED_TRIADS = PRINTED.trim()
  .split('\n')
  .flatMap((line) => {
    const [note, ...texts] = line.split('|').map((text) => text.trim());
    return texts.map((text, column) => {
      const [chord, hand] = COLUMNS[column]!;
      const [usual, alternate] = text.match(/\d+/g)!;
      return { note: note as StartingNote, chord, hand, usual: usual!, alternate };
    });
  });
