/** Scores for the exports: small ones written out, and any item or round of the deck. */
import { DECK, roundItems, STARTING_NOTES, WAYS } from '../../shared/music/deck';
import type { Finger } from '../../shared/music/fingering/types';
import type { Score, ScoreNote } from '../../shared/music/score';
import { type ScoreOptions, scoreOf } from '../../shared/music/score-of';
import { midiOf } from '../../shared/music/theory';
import { fc } from '../learning/property';
import { computedPlans } from '../music/plans';

/** `note('D4 F#4', 24)` is a chord of one beat, `note('', 24)` a rest. */
export function note(names: string, length: number, more: Partial<ScoreNote> = {}): ScoreNote {
  const keys = names
    .split(' ')
    .flatMap((name, tone) => (name === '' ? [] : [{ name, midi: midiOf(name), tone }]));
  return { keys, fingers: keys.map(() => null), length, change: null, ...more };
}

export const fingered = (names: string, length: number, ...fingers: Finger[]): ScoreNote =>
  note(names, length, { fingers });

export const score = (right: readonly ScoreNote[], left: readonly ScoreNote[] = []): Score => ({
  title: 'A drill',
  tempo: 240,
  grouping: 4,
  right,
  left,
  joins: [],
});

export const OPTIONS: ScoreOptions = {
  title: 'D major, hands together',
  tempo: 240,
  grouping: 4,
  fingeringOf: computedPlans(),
  pedal: true,
};

const groupings = fc.constantFrom(3 as const, 4 as const);

export const anyItemScore = fc
  .tuple(fc.constantFrom(...DECK), groupings, fc.boolean())
  .map(([item, grouping, pedal]) => scoreOf([item], { ...OPTIONS, grouping, pedal }));

export const anyRoundScore = fc
  .tuple(
    fc.constantFrom(...STARTING_NOTES),
    fc.constantFrom(...WAYS),
    groupings,
    fc.integer({ min: 2, max: 4 }),
  )
  .map(([start, way, grouping, count]) =>
    scoreOf(roundItems(start, way).slice(0, count), { ...OPTIONS, grouping }),
  );

/** Lengths of drills that lie in plain beats, and those of triplets; each list fills whole beats. */
const BEATS = [
  [24],
  [12, 12],
  [6, 6, 6, 6],
  [18, 6],
  [6, 18],
  [12, 6, 6],
  [3, 3, 6, 12],
  [36, 12],
  [48],
  [72],
  [96],
  [8, 8, 8],
  [16, 8],
  [8, 16],
  [6, 12, 6],
  [12, 4, 8],
  [30, 18],
  [6, 42],
  [16, 32],
] as const;

/** A drill of one hand or both, with chords, rests, accents, silent notes and overlaps. */
const anyHand = fc
  .array(fc.constantFrom(...BEATS), { minLength: 1, maxLength: 12 })
  .chain((beats) =>
    fc.tuple(
      ...beats.flat().map((length) =>
        fc
          .record({
            names: fc.constantFrom('', 'D4', 'F#4', 'Cb5', 'D4 F#4 A4', 'Ebb3', 'C2', 'F#7', 'C#1'),
            isSilent: fc.boolean(),
            isAccented: fc.boolean(),
            overlap: fc.constantFrom(0, 2),
            hasPedal: fc.boolean(),
          })
          .map(({ names, ...more }) => note(names, length, more)),
      ),
    ),
  );

export const anyDrill = fc
  .tuple(anyHand, fc.oneof(anyHand, fc.constant([])))
  .map(([right, left]) => score(right, left));

/** A hand as a list of what begins when: onset and length in parts of a beat. */
export function timed(notes: readonly ScoreNote[]) {
  let at = 0;
  return notes.map((one) => {
    const from = at;
    at += one.length;
    return { ...one, at: from };
  });
}
