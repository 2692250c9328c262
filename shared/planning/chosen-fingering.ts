/** The fingering that holds for a student: the one that the person chose, or else the best for the hand. */
import type { Item } from '../music/deck';
import { questionOf } from '../music/fingering/item';
import { analyse, type Fingering, type Fingerings, fingeringsOf } from '../music/fingering/result';
import type { FingerPlan, Hand, Question } from '../music/fingering/types';
import { type ContraryForm, sequenceOf } from '../music/sequence';
import type { Student } from './student';

/** What of a student decides on fingerings. */
export type Player = Pick<Student, 'fingerings' | 'span' | 'programme'>;

/** What a player is asked with one hand of an item; null when that hand rests. */
export function handQuestion(player: Player, item: Item, hand: Hand): Question | null {
  const contraryForm: ContraryForm = player.programme?.contraryForm ?? 'formula';
  return questionOf(sequenceOf(item, { contraryForm }), hand, player.span ?? undefined);
}

/** Fingerings that were computed once: searching takes longer than drawing, and the same are asked for again and again. */
const computed = new Map<string, Fingerings>();

/** The best fingering and its alternatives. */
export function computedFor(question: Question): Fingerings {
  const { keys, hand, octaves, span, start } = question;
  const key = [keys.join('-'), hand, octaves, span, start].join();
  const known = computed.get(key);
  if (known !== undefined) return known;
  const found = fingeringsOf(question);
  computed.set(key, found);
  return found;
}

/** The plan that the person chose for an arpeggio, over any number of octaves; null without one. */
export const chosenPlan = (player: Player, item: Item, hand: Hand): FingerPlan | null =>
  player.fingerings.get(`${item.arpeggio}.${hand}`) ?? null;

/** What holds over the octaves of a question: the plan that was chosen, or else the best. */
export const fingeringOn = (question: Question, chosen: FingerPlan | null): Fingering =>
  chosen === null ? computedFor(question).best : analyse(question, chosen);

/** The fingering that holds for one hand of an item; null when that hand rests. */
export function fingeringFor(player: Player, item: Item, hand: Hand): Fingering | null {
  const question = handQuestion(player, item, hand);
  return question === null ? null : fingeringOn(question, chosenPlan(player, item, hand));
}
