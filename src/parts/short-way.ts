/** Ways of playing in two short words, for narrow columns. */
import type { Way } from '../../shared/music/deck';

export const SHORT_WAY: Readonly<Record<Way, readonly [string, string]>> = {
  'right.2': ['right', '2 oct.'],
  'left.2': ['left', '2 oct.'],
  'together.2': ['both', '2 oct.'],
  'together.4': ['both', '4 oct.'],
  'together.contrary': ['both', 'contr.'],
  'right.4': ['right', '4 oct.'],
  'left.4': ['left', '4 oct.'],
};
