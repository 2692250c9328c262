/** Placing a student who already plays a part of it: few probing runs, each the one that is expected to tell most. */
import { dayNumber } from '../log/day';
import type { Day } from '../log/events';
import type { Programme } from '../log/programme';
import { type Item, roundItems, type Stage, STAGES } from '../music/deck';
import { playableTempo, type Tempo } from '../music/tempo';
import type { Learner } from '../learning/learner';
import { chanceEven, informationOf, reachOf } from '../learning/prediction';
import { topStage } from './stages';

/** After so many the spread of the reach falls only slowly (tests/simulation/RESULTS.md, placement). */
export const PROBES = 10;

export interface Probe {
  readonly item: Item;
  /** With a whole metronome mark: as likely even as not, which tells most. */
  readonly tempo: Tempo;
}

const stagesUpTo = (programme: Programme): readonly Stage[] =>
  STAGES.slice(0, topStage(programme) + 1);

/** How often an item's note and chord have been played: the model sees no difference, the hand does. */
function timesPlayed(learner: Learner, items: readonly Item[]): (item: Item) => number {
  const times = new Map<string, number>();
  for (const item of items) {
    const runs = learner.runs[item.index]!;
    for (const key of [item.note, item.chord]) times.set(key, (times.get(key) ?? 0) + runs);
  }
  return ({ note, chord }) => times.get(note)! + times.get(chord)!;
}

/**
 * The next probing run: of all items up to the highest stage that is asked for, the one that is expected to lower the
 * spread of all their reaches most; among equals the note and chord that were played least, then the order of the deck.
 */
export function nextProbe(learner: Learner, programme: Programme, day: Day): Probe {
  const deck = stagesUpTo(programme).flatMap((stage) =>
    programme.notes.flatMap((note) => roundItems(note, stage)),
  );
  const played = timesPlayed(learner, deck);
  const number = dayNumber(day);
  // A second run of the same item would tell more of the shared part, but nothing of what other items have of their own.
  const fresh = deck.filter((item) => learner.lastDay[item.index] !== number);
  const [first] = (fresh.length > 0 ? fresh : deck)
    .map((item) => ({
      item,
      // Rounded, so that equals are equal whatever the order of the sums.
      told: Math.round(1e9 * informationOf(learner, item, deck, number)),
      times: played(item),
    }))
    .toSorted((a, b) => b.told - a.told || a.times - b.times || a.item.index - b.item.index);
  const { item } = first!;
  return { item, tempo: playableTempo(reachOf(learner, item, day).tempo, programme.grouping) };
}

/** A stage is taken as reached when its items are even at half the target with this mean chance. */
const REACHED = 0.7;

/** The highest stage that the probes say is reached: where the programme should begin. */
export function placedStage(learner: Learner, programme: Programme, day: Day): Stage {
  const isReached = (stage: Stage): boolean => {
    const half = programme.stages[stage].target / 2;
    const items = programme.notes.flatMap((note) => roundItems(note, stage));
    const sum = items.reduce((total, item) => total + chanceEven(learner, item, half, day), 0);
    return sum >= REACHED * items.length;
  };
  const stages = stagesUpTo(programme);
  const firstNotReached = stages.findIndex((stage) => !isReached(stage));
  return stages[firstNotReached < 0 ? stages.length - 1 : Math.max(0, firstNotReached - 1)]!;
}
