/** Fingers along the steps of the deck's items: similar motion, and contrary motion with its turns. */
import { describe, expect, it } from 'vitest';
import { DECK, type ItemId, itemOf } from '../../shared/music/deck';
import { fingersOfSteps, questionOf } from '../../shared/music/fingering/item';
import { fingersOfCourse } from '../../shared/music/fingering/plan';
import { fingeringsOf } from '../../shared/music/fingering/result';
import type { Finger, FingerPlan, Hand } from '../../shared/music/fingering/types';
import { type ContraryForm, sequenceOf, type Step } from '../../shared/music/sequence';
import { HANDS } from './questions';

function bestPlans(steps: readonly Step[]): Readonly<Partial<Record<Hand, FingerPlan>>> {
  const plans: Partial<Record<Hand, FingerPlan>> = {};
  for (const hand of HANDS) {
    const question = questionOf(steps, hand);
    if (question) plans[hand] = fingeringsOf(question).best.plan;
  }
  return plans;
}

function fingersOf(id: ItemId, hand: Hand, contraryForm: ContraryForm = 'formula'): string {
  const steps = sequenceOf(itemOf(id), { contraryForm });
  return fingersOfSteps(steps, bestPlans(steps))
    .map((step) => step[hand] ?? '-')
    .join('');
}

/** Whether one finger can follow another when the line rises (or falls) by so much. */
const isPlayable = (hand: Hand, rise: number, from: Finger, to: Finger): boolean => {
  const [inner, outer] = rise > 0 === (hand === 'right') ? [from, to] : [to, from];
  return inner < outer || (outer === 1 && inner !== 1);
};

describe('the question of an item', () => {
  it.each([
    ['d.major-6.right.2', 'right', { keys: [62, 65, 70], octaves: 2, start: 'low' }],
    ['d.major-6.together.4', 'left', { keys: [38, 41, 46], octaves: 4, start: 'low' }],
    ['d.major-6.together.contrary', 'right', { keys: [50, 53, 58], octaves: 4, start: 'low' }],
  ] as const)('%s, %s hand', (id, hand, question) => {
    expect(questionOf(sequenceOf(itemOf(id)), hand)).toEqual({ ...question, hand });
  });

  it('of a resting hand is null', () => {
    expect(questionOf(sequenceOf(itemOf('c.major-53.right.2')), 'left')).toBeNull();
  });

  it('of the left hand in plain contrary motion begins at the top', () => {
    const steps = sequenceOf(itemOf('c.major-53.together.contrary'), { contraryForm: 'plain' });
    expect(questionOf(steps, 'left', 11)).toEqual({
      keys: [24, 28, 31],
      hand: 'left',
      octaves: 2,
      start: 'high',
      span: 11,
    });
  });
});

describe('the fingers of an item', () => {
  it.each([
    ['c.major-53.right.2', 'right', '1231235321321'],
    ['c.major-53.right.2', 'left', '-------------'],
    ['c.major-53.left.2', 'left', '5421421241245'],
    ['bb.minor-53.together.2', 'right', '2312312132132'],
    ['bb.minor-53.together.2', 'left', '3213213123123'],
    ['eb.diminished-7.right.2', 'right', '23123412321432132'],
  ] as const)('%s, %s hand', (id, hand, fingers) => {
    expect(fingersOf(id, hand)).toBe(fingers);
  });

  it.each([
    // Up two, out (right on up, left back down), in again …: 5 only where the right hand turns at the top, 1 elsewhere.
    ['c.major-53.together.contrary', 'right', '1231231231235321321231235321321231235321321321321'],
    ['c.major-53.together.contrary', 'left', '5421421241245421421421421241241241245421421241245'],
    // The black bottom note has 2 where the right hand starts, turns or stops, and 4 where it goes straight on.
    ['bb.major-53.together.contrary', 'right', '2124124124124214212124124214212124124214214214212'],
  ] as const)('%s, %s hand, formula', (id, hand, fingers) => {
    expect(fingersOf(id, hand)).toBe(fingers);
  });

  it.each([
    ['c.major-53.together.contrary', 'right', '1231235321321'],
    ['c.major-53.together.contrary', 'left', '1241245421421'],
    // From the top the left hand begins with 2 before the thumb, as the right hand does from the bottom.
    ['bb.major-53.together.contrary', 'left', '2123123213212'],
  ] as const)('%s, %s hand, plain', (id, hand, fingers) => {
    expect(fingersOf(id, hand, 'plain')).toBe(fingers);
  });

  it('can be played at every step of the 924 items', () => {
    const plans = new Map<string, FingerPlan>();
    const planOf = (steps: readonly Step[], hand: Hand): FingerPlan | undefined => {
      const question = questionOf(steps, hand);
      if (!question) return undefined;
      const key = [question.keys.map((midi) => midi % 12), hand, question.start].join();
      const plan = plans.get(key) ?? fingeringsOf(question).best.plan;
      plans.set(key, plan);
      return plan;
    };
    const bad: string[] = [];
    for (const item of DECK) {
      for (const contraryForm of ['formula', 'plain'] as const) {
        const steps = sequenceOf(item, { contraryForm });
        const hands = HANDS.flatMap((hand) => {
          const plan = planOf(steps, hand);
          return plan ? [[hand, plan] as const] : [];
        });
        const fingered = fingersOfSteps(steps, Object.fromEntries(hands));
        for (const [hand] of hands) {
          for (let i = 1; i < steps.length; i++) {
            const rise = steps[i]![hand]!.midi - steps[i - 1]![hand]!.midi;
            if (!isPlayable(hand, rise, fingered[i - 1]![hand]!, fingered[i]![hand]!))
              bad.push(`${item.id} ${contraryForm} ${hand} ${i}`);
          }
        }
      }
    }
    expect(bad).toEqual([]);
  });
});

describe('a course', () => {
  it('may start in the middle, and pass the place where it turned before', () => {
    const plan: FingerPlan = { low: [2], pattern: [4, 1, 2], high: [5] };
    const places = [3, 2, 1, 0, 1, 2, 3, 4, 5, 6, 5];
    expect(fingersOfCourse(plan, places).join('')).toBe('52121241252');
  });
});
