/** Readiness: how likely the items of a programme are to be at least even at their target tempo on a date. */
import type { Day } from '../log/events';
import { askedStages, asksFor, type Programme, targetFor } from '../log/programme';
import { type Item, type ItemId, roundItems, type Stage } from '../music/deck';
import type { Learner } from './learner';
import { chanceEven } from './prediction';

export interface Readiness {
  /** Mean of the chances over the deck, 0 to 1: never a count over a threshold. */
  readonly share: number;
  readonly byStage: ReadonlyMap<Stage, number>;
  readonly chances: ReadonlyMap<ItemId, number>;
  /** Size of the deck. */
  readonly items: number;
}

/** The items of a stage that the programme asks for, by starting note and chord. */
export const itemsAsked = (programme: Programme, stage: Stage): readonly Item[] =>
  programme.notes.flatMap((note) =>
    roundItems(note, stage).filter(({ chord }) => asksFor(programme, stage, chord)),
  );

/** All items that the programme asks for, by stage, starting note and chord. */
export const deckOf = (programme: Programme): readonly Item[] =>
  askedStages(programme).flatMap((stage) => itemsAsked(programme, stage));

const mean = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;

/** Readiness on a day, if nothing is played until then. */
export function readinessOf(learner: Learner, programme: Programme, day: Day): Readiness {
  const chances = new Map<ItemId, number>();
  const byStage = new Map<Stage, number>();
  for (const stage of askedStages(programme)) {
    const ofStage = itemsAsked(programme, stage).map((item) => {
      const chance = chanceEven(learner, item, targetFor(programme, item), day);
      chances.set(item.id, chance);
      return chance;
    });
    byStage.set(stage, mean(ofStage));
  }
  return { share: mean([...chances.values()]), byStage, chances, items: chances.size };
}
