/** What holds for the fingering of every rising chord, in or out of the deck. */
import { describe, expect, it } from 'vitest';
import { costOf } from '../../shared/music/fingering/cost';
import { asRightHand, lineOf } from '../../shared/music/fingering/line';
import { problemOf } from '../../shared/music/fingering/own';
import { fingersOfRun } from '../../shared/music/fingering/plan';
import { analyse, type Fingering, fingeringsOf } from '../../shared/music/fingering/result';
import { LARGEST_SPAN, SMALLEST_SPAN } from '../../shared/music/fingering/spans';
import { FingeringError, type FingerPlan, type Question } from '../../shared/music/fingering/types';
import { fc } from '../learning/property';
import { anyQuestion, deckQuestions } from './questions';

const all = (question: Question): readonly Fingering[] => {
  const { best, alternatives } = fingeringsOf(question);
  return [best, ...alternatives];
};

/** The same chord seen in a mirror at D, for the other hand. */
function mirror({ keys, hand, octaves, span, start }: Required<Question>): Required<Question> {
  const [bottom, ...upper] = keys;
  return {
    keys: [112 - bottom!, ...upper.map((key) => 124 - key).toReversed()],
    hand: hand === 'right' ? 'left' : 'right',
    octaves,
    span,
    start: start === 'low' ? 'high' : 'low',
  };
}

/** Points that a child's hand pays for the reaches of a plan beyond what the average hand pays. */
function strainOf(question: Question, plan: FingerPlan): number {
  const costAt = (span: number) =>
    costOf(lineOf({ ...question, span }), asRightHand(plan, question.hand)).total;
  return costAt(8) - costAt(13);
}

/** The widest step between neighbouring fingers of one position, and the widest position, in semitones. */
function widthsOf({ positions }: Fingering): readonly [step: number, position: number] {
  const steps = positions.flatMap(({ notes }) =>
    notes.slice(1).map((note, i) => note.key - notes[i]!.key),
  );
  const widths = positions.map(({ notes }) => notes.at(-1)!.key - notes[0]!.key);
  return [Math.max(...steps), Math.max(...widths)];
}

describe('any chord', () => {
  it('can be played: fingers cross at a pass of the thumb only, once a position', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        for (const { plan, positions } of all(question)) {
          expect(problemOf(plan, question.hand)).toBeNull();
          for (const { notes } of positions) {
            const fingers = notes.map(({ finger }) => finger);
            const inOrder = question.hand === 'right' ? fingers : fingers.toReversed();
            expect(inOrder).toEqual([...new Set(inOrder)].toSorted((a, b) => a - b));
          }
        }
      }),
    );
  });

  it('has two to five alternatives, all different, best first', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const choices = all(question);
        expect(choices.length).toBeGreaterThanOrEqual(3);
        expect(choices.length).toBeLessThanOrEqual(6);
        expect(new Set(choices.map(({ fingers }) => fingers.join(''))).size).toBe(choices.length);
        const costs = choices.map(({ cost }) => cost.total);
        for (let i = 1; i < costs.length; i++)
          expect(costs[i]! - costs[i - 1]!).toBeGreaterThan(-1e-6);
      }),
    );
  });

  it('takes the fifth finger at the ends only', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        for (const { fingers } of all(question)) expect(fingers.slice(1, -1)).not.toContain(5);
      }),
    );
  });

  it('has mirrored hands in the mirror', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const mirrored = all(mirror(question));
        expect(mirrored.map(({ fingers }) => fingers.toReversed())).toEqual(
          all(question).map(({ fingers }) => fingers),
        );
      }),
    );
  });

  it('has the same fingers in every octave', () => {
    fc.assert(
      fc.property(anyQuestion, fc.constantFrom(-24, -12, 12, 24), (question, shift) => {
        const shifted = { ...question, keys: question.keys.map((key) => key + shift) };
        expect(all(shifted).map(({ plan }) => plan)).toEqual(all(question).map(({ plan }) => plan));
      }),
    );
  });

  it('costs the same whether it was found or typed', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        for (const choice of all(question)) {
          const { cost, changes } = analyse(question, choice.plan);
          expect(cost).toEqual(choice.cost);
          expect(changes).toEqual(choice.changes);
          const sum = Object.values(cost.causes).reduce((a, b) => a + b, 0);
          expect(sum).toBeCloseTo(cost.total, 6);
        }
      }),
    );
  });
});

describe('a smaller hand', () => {
  it('is never given more strain than a larger one, with any chord', () => {
    const anySpan = fc.integer({ min: SMALLEST_SPAN, max: LARGEST_SPAN });
    fc.assert(
      fc.property(anyQuestion, anySpan, anySpan, (question, one, other) => {
        const atSpan = (span: number) => {
          const { plan } = fingeringsOf({ ...question, octaves: 2, span }).best;
          return strainOf({ ...question, octaves: 2 }, plan);
        };
        const [ofSmall, ofLarge] = [Math.min(one, other), Math.max(one, other)].map(atSpan);
        expect(ofSmall).toBeLessThanOrEqual(ofLarge! + 1e-6);
      }),
      { numRuns: 200 },
    );
  });

  it('is never given a wider step or a wider position, with the 132 arpeggios', () => {
    const widths = [7, 9, 11, 13, 16].map((span) =>
      deckQuestions(span).map((question) => widthsOf(fingeringsOf(question).best)),
    );
    for (let i = 1; i < widths.length; i++) {
      for (const [k, [step, position]] of widths[i - 1]!.entries()) {
        expect(step).toBeLessThanOrEqual(widths[i]![k]![0]);
        expect(position).toBeLessThanOrEqual(widths[i]![k]![1]);
      }
    }
  });

  it('hears of every stretch that a larger one hears of, given the same fingers', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const { plan } = fingeringsOf(question).best;
        const stretches = (span: number) =>
          analyse({ ...question, span }, plan).positions.flatMap((position) => position.stretches);
        expect(stretches(9).length).toBeGreaterThanOrEqual(stretches(13).length);
      }),
    );
  });
});

describe('the arpeggios of the deck', () => {
  it('have one plan for any number of octaves', () => {
    for (const question of deckQuestions()) {
      const { plan } = fingeringsOf(question).best;
      for (const octaves of [1, 3, 4])
        expect(fingeringsOf({ ...question, octaves }).best.plan).toEqual(plan);
    }
  });

  it('go on through the octaves with one pattern', () => {
    const plan: FingerPlan = { low: [2], pattern: [4, 1, 2], high: [4] };
    expect(fingersOfRun(plan, 1).join('')).toBe('2124');
    expect(fingersOfRun(plan, 3).join('')).toBe('2124124124');
  });
});

describe('a bad question', () => {
  const question: Question = { keys: [60, 64, 67], hand: 'right', octaves: 2 };
  it.each([
    [{ keys: [60] }, '60'],
    [{ keys: [60, 60, 67] }, '60 60 67'],
    [{ keys: [60, 64, 72] }, '60 64 72'],
    [{ octaves: 0 }, '0 octaves'],
    [{ span: 3 }, 'span of 3'],
    [{ span: Number.NaN }, 'NaN'],
  ])('%j is refused by its value', (change, text) => {
    expect(() => fingeringsOf({ ...question, ...change })).toThrow(FingeringError);
    expect(() => fingeringsOf({ ...question, ...change })).toThrow(text);
  });
});
