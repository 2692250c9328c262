/** Computed plans for scores in tests, each question answered once. */
import type { Item } from '../../shared/music/deck';
import { questionOf } from '../../shared/music/fingering/item';
import { fingeringsOf } from '../../shared/music/fingering/result';
import type { FingerPlan, Hand } from '../../shared/music/fingering/types';
import { type SequenceOptions, sequenceOf } from '../../shared/music/sequence';

const known = new Map<string, FingerPlan>();

export const computedPlans =
  (options: SequenceOptions = {}) =>
  (item: Item, hand: Hand): FingerPlan => {
    const question = questionOf(sequenceOf(item, options), hand)!;
    const code = JSON.stringify(question);
    const plan = known.get(code) ?? fingeringsOf(question).best.plan;
    known.set(code, plan);
    return plan;
  };
