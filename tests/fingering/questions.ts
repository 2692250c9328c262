/** Questions for the tests: arpeggios of the deck by name, and any rising chord for the properties. */
import { CHORDS, type ChordId, chordOf } from '../../shared/music/chords';
import { STARTING_NOTES, type StartingNote } from '../../shared/music/deck';
import { fingeringsOf } from '../../shared/music/fingering/result';
import { SMALLEST_SPAN } from '../../shared/music/fingering/spans';
import type { Hand, Question } from '../../shared/music/fingering/types';
import { pitchClassOf } from '../../shared/music/spelling';
import { semitonesOf } from '../../shared/music/theory';
import { fc } from '../learning/property';

export const HANDS: readonly Hand[] = ['right', 'left'];

export const keysOf = (note: StartingNote, chord: ChordId): readonly number[] =>
  chordOf(chord).intervals.map((interval) => 48 + pitchClassOf(note) + semitonesOf(interval));

/** All 264 questions of the deck over two octaves. */
export const deckQuestions = (span?: number): readonly Question[] =>
  STARTING_NOTES.flatMap((note) =>
    CHORDS.flatMap(({ id }) =>
      HANDS.map((hand) => ({
        keys: keysOf(note, id),
        hand,
        octaves: 2,
        ...(span === undefined ? {} : { span }),
      })),
    ),
  );

/** The best fingers of an arpeggio, from its lowest note up: "1231235". */
export function digitsOf(note: StartingNote, chord: ChordId, hand: Hand, octaves = 2): string {
  return fingeringsOf({ keys: keysOf(note, chord), hand, octaves }).best.fingers.join('');
}

/** Rising chords of so many notes within an octave. */
export const chordsOf = (fewest: number, most: number): fc.Arbitrary<readonly number[]> =>
  fc
    .record({
      bottom: fc.integer({ min: 36, max: 60 }),
      steps: fc.uniqueArray(fc.integer({ min: 1, max: 11 }), {
        minLength: fewest - 1,
        maxLength: most - 1,
      }),
    })
    .map(({ bottom, steps }) => [0, ...steps.toSorted((a, b) => a - b)].map((n) => bottom + n));

export const anyQuestion: fc.Arbitrary<Required<Question>> = fc.record({
  keys: chordsOf(2, 5),
  hand: fc.constantFrom(...HANDS),
  octaves: fc.integer({ min: 1, max: 4 }),
  span: fc.integer({ min: SMALLEST_SPAN, max: 16 }),
  start: fc.constantFrom('low' as const, 'high' as const),
});
