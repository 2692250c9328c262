/** What each drill is for and how it is played, in a teacher's words (common practice, no source). */
import type { DrillKind } from './kinds';

export interface DrillWords {
  /** One line. */
  readonly purpose: string;
  readonly how: string;
}

export const DRILL_WORDS: Readonly<Record<DrillKind, DrillWords>> = {
  join: {
    purpose: 'The thumb comes to its key without a bump and without a gap.',
    how: 'Listen to the three notes as one line. Slower until none of them sticks out, then a little faster each time.',
  },
  'out-and-back': {
    purpose: 'The hand arrives in the new position as a whole, not finger by finger.',
    how: 'Think of both positions before you start. The arm carries the hand across while the last finger still holds.',
  },
  groups: {
    purpose: 'Speed in small doses, with the thumb as the place to rest.',
    how: 'Play the short notes at once, as one movement, and stop on the long one. Let go of all tension there before the next group.',
  },
  chords: {
    purpose: 'Each position is known to the hand before the fingers run through it.',
    how: 'Put the chord down softly, all notes at once. In the rest lift the hand, open it over the next keys, and only then play.',
  },
  'long-short': {
    purpose: 'Every second step is quick, so that half of the joins are tried at speed.',
    how: 'Wait on the long note with a loose hand, and place the short one and the next in one go.',
  },
  'short-long': {
    purpose:
      'The other steps are quick: together with its mirror image every join is tried at speed.',
    how: 'The short note is on the beat and light; the hand is still on the long one.',
  },
  'silent-thumb': {
    purpose: 'The thumb learns the way without being allowed to press.',
    how: 'Where the note has a cross, the thumb only lies on its key and makes no sound. The other fingers sing on over it.',
  },
  transfer: {
    purpose:
      'The weight of the arm passes from finger to finger, and the fingertips feel their keys.',
    how: 'Keep each key down until the next finger stands, then let go. Where the hand changes its position, let the key go early.',
  },
  accents: {
    purpose: 'No finger hides behind another: each takes the lead once.',
    how: 'Play the run once for each finger. It falls with a little more weight on its notes; all others stay as they were.',
  },
  opposite: {
    purpose:
      'Both hands do the same at once, outwards and inwards, so that one can learn from the other.',
    how: 'Slowly, each hand with its own fingering. Listen which of the two comes late at the thumb.',
  },
};
