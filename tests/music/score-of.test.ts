import { describe, expect, it } from 'vitest';
import { DECK, type Item, itemOf, roundItems, STARTING_NOTES, WAYS } from '../../shared/music/deck';
import { questionOf } from '../../shared/music/fingering/item';
import { analyse } from '../../shared/music/fingering/result';
import type { FingerPlan } from '../../shared/music/fingering/types';
import { PARTS_OF_BEAT, type Score, type ScoreNote } from '../../shared/music/score';
import { type ScoreOptions, scoreOf } from '../../shared/music/score-of';
import { roundIntervals, roundNotes, sequenceOf } from '../../shared/music/sequence';
import { fc } from '../learning/property';
import { computedPlans } from './plans';

const options: ScoreOptions = {
  title: 'D major, right hand',
  tempo: 240,
  grouping: 4,
  fingeringOf: computedPlans(),
  pedal: false,
};
const withPlan = (plan: FingerPlan): ScoreOptions => ({ ...options, fingeringOf: () => plan });

const names = (notes: readonly ScoreNote[]): string => notes.map((n) => n.keys[0]!.name).join(' ');
const fingers = (notes: readonly ScoreNote[]): string => notes.map((n) => n.fingers[0]).join('');
const lengthOf = (notes: readonly ScoreNote[]): number =>
  notes.reduce((sum, n) => sum + n.length, 0);
const changes = (notes: readonly ScoreNote[]): readonly string[] =>
  notes.flatMap(({ change, keys }) => (change ? [`${change} ${keys[0]!.name}`] : []));
const handsOf = ({ right, left }: Score): readonly (readonly ScoreNote[])[] =>
  [right, left].filter((notes) => notes.length > 0);

describe('the score of an item', () => {
  const d = scoreOf(
    [itemOf('d.major-53.right.2')],
    withPlan({ low: [1], pattern: [1, 2, 3], high: [5] }),
  );

  it('has its notes and fingers, in one hand or in both', () => {
    expect(names(d.right)).toBe('D4 F#4 A4 D5 F#5 A5 D6 A5 F#5 D5 A4 F#4 D4');
    expect(fingers(d.right)).toBe('1231235321321');
    expect(d.left).toEqual([]);
    expect(d.joins).toEqual([]);
    expect(d.title).toBe('D major, right hand');
  });

  it('says where the hand changes its position', () => {
    expect(changes(d.right)).toEqual(['thumb under D5', 'hand over A4']);
    const left = scoreOf(
      [itemOf('d.major-53.left.2')],
      withPlan({ low: [5], pattern: [1, 4, 2], high: [1] }),
    );
    expect(fingers(left.left)).toBe('5421421241245');
    expect(changes(left.left)).toEqual(['hand over F#4', 'thumb under D4']);
  });

  it('turns as often as the formula pattern does', () => {
    const item = itemOf('d.major-53.together.contrary');
    const { right } = scoreOf([item], options);
    const upAndDown = changes(d.right).length;
    // Up two octaves, up two more, down, up, down, up, down, down: four times as long.
    expect(right).toHaveLength(49);
    expect(changes(right).length).toBeGreaterThanOrEqual(4 * upAndDown);
    expect(changes(right)).toContain('thumb under D6');
  });

  it('marks the pedal on the last note before each change of position, if it is asked for', () => {
    expect(d.right.some(({ hasPedal }) => hasPedal)).toBe(false);
    const { right } = scoreOf([itemOf('d.major-53.right.2')], { ...options, pedal: true });
    expect(right.map(({ hasPedal }) => hasPedal === true)).toEqual(
      right.map((_, i) => i < right.length - 1 && right[i + 1]!.change !== null),
    );
  });

  it('leaves notes without fingers where there is no plan', () => {
    const { right } = scoreOf([itemOf('d.major-53.right.2')], {
      ...options,
      fingeringOf: () => null,
    });
    expect(right.every((note) => note.fingers[0] === null && note.change === null)).toBe(true);
  });

  it('holds for every item in threes and fours, in both contrary forms', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...DECK),
        fc.constantFrom(3 as const, 4 as const),
        fc.constantFrom('formula' as const, 'plain' as const),
        (item, grouping, contraryForm) => {
          const fingeringOf = computedPlans({ contraryForm });
          const score = scoreOf([item], { ...options, grouping, contraryForm, fingeringOf });
          const steps = sequenceOf(item, { contraryForm });
          expect(score.right.flatMap(({ keys }) => keys)).toEqual(
            steps.flatMap(({ right }) => right ?? []),
          );
          expect(score.left.flatMap(({ keys }) => keys)).toEqual(
            steps.flatMap(({ left }) => left ?? []),
          );
          for (const notes of handsOf(score)) {
            const last = notes.at(-1)!.length;
            const before = ((steps.length - 1) * PARTS_OF_BEAT) / grouping;
            expect(lengthOf(notes)).toBe(before + last);
            expect(lengthOf(notes) % PARTS_OF_BEAT).toBe(0);
            expect(last).toBeGreaterThanOrEqual(PARTS_OF_BEAT / 2);
            expect(last).toBeLessThan(1.5 * PARTS_OF_BEAT);
          }
        },
      ),
    );
  });

  it('agrees with the analysis of the run about every change of parallel motion', () => {
    const parallel = DECK.filter(({ way }) => !way.endsWith('contrary'));
    fc.assert(
      fc.property(fc.constantFrom(...parallel), (item) => {
        const score = scoreOf([item], options);
        for (const hand of ['right', 'left'] as const) {
          const question = questionOf(sequenceOf(item), hand);
          if (!question) continue;
          const known = analyse(question, options.fingeringOf(item, hand)!).changes;
          const found = score[hand].flatMap(({ change, keys }) =>
            change ? [[change, keys[0]!.midi]] : [],
          );
          expect(found).toEqual(known.map(({ kind, to }) => [kind, to.key]));
        }
      }),
    );
  });
});

describe('the score of a round', () => {
  const plans: Readonly<Record<string, FingerPlan>> = {
    'db.minor-53': { low: [3], pattern: [3, 1, 2], high: [3] },
    'db.major-6': { low: [2], pattern: [2, 1, 3], high: [2] },
    'eb.minor-53': { low: [1], pattern: [1, 2, 3], high: [5] },
    'eb.major-6': { low: [2, 3], pattern: [4, 1, 2], high: [4] },
  };
  const roundOf = (first: Parameters<typeof itemOf>[0], second: Parameters<typeof itemOf>[0]) =>
    scoreOf([itemOf(first), itemOf(second)], {
      ...options,
      fingeringOf: ({ arpeggio }: Item) => plans[arpeggio]!,
    });

  it('plays the shared note once, as the beginning of the next arpeggio', () => {
    const { right, joins } = roundOf('db.minor-53.right.2', 'db.major-6.right.2');
    expect(names(right.slice(10, 15))).toBe('G#4 E4 C#4 E4 A4');
    expect(fingers(right.slice(10, 15))).toBe('21213');
    expect(joins).toEqual([72]);
    const other = roundOf('eb.minor-53.right.2', 'eb.major-6.right.2');
    expect(names(other.right.slice(10, 15))).toBe('Bb4 Gb4 D#4 F#4 B4');
  });

  it('keeps the finger on which it arrives where the next one is out of reach', () => {
    // Coming down with 3 2, the hand cannot take 2 again, but can go on from the thumb.
    const { right } = roundOf('eb.minor-53.right.2', 'eb.major-6.right.2');
    expect(fingers(right.slice(10, 15))).toBe('32132');
  });

  it('holds every note once, in every round', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...STARTING_NOTES),
        fc.constantFrom(...WAYS),
        fc.constantFrom(3 as const, 4 as const),
        fc.integer({ min: 1, max: 11 }),
        (note, way, grouping, count) => {
          const items = roundItems(note, way).slice(0, count);
          const score = scoreOf(items, { ...options, grouping });
          for (const notes of handsOf(score)) expect(notes).toHaveLength(roundNotes(items));
          const part = PARTS_OF_BEAT / grouping;
          expect(score.joins).toEqual(
            items.slice(1).map((_, i) => roundIntervals(items.slice(0, i + 1)) * part),
          );
        },
      ),
    );
  });

  it('is empty without items', () => {
    expect(scoreOf([], options)).toMatchObject({ right: [], left: [], joins: [] });
  });
});
