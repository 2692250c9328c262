/**
 * Placing a student who already plays a part of it: few probing runs, each the one that is expected to tell most. One
 * after another they leave as little spread as the best division of all of them (tests/simulation/RESULTS.md, placement).
 */
import { dayNumber } from '../log/day';
import type { Day } from '../log/events';
import { askedStages, asksFor, type Programme, targetFor } from '../log/programme';
import { type Item, type ItemId, roundItems, type Stage, stageIndex, STAGES } from '../music/deck';
import { playableTempo, type Tempo } from '../music/tempo';
import type { Learner } from '../learning/learner';
import { chanceEven, informationOf, reachOf } from '../learning/prediction';
import { fastestFor } from './candidates';
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

/** Of a stage that is only a step on the way, the chords that are asked for in any other. */
function itemsOf(programme: Programme, stage: Stage): readonly Item[] {
  const asked = askedStages(programme);
  const stages = asked.includes(stage) ? [stage] : asked;
  return programme.notes.flatMap((note) =>
    roundItems(note, stage).filter(({ chord }) =>
      stages.some((one) => asksFor(programme, one, chord)),
    ),
  );
}

/** How often an item's note and chord have been played: the model sees no difference, the hand does. */
function timesPlayed(learner: Learner, items: readonly Item[]): (item: Item) => number {
  const times = new Map<string, number>();
  for (const item of items) {
    const runs = learner.runs[item.index]!;
    for (const key of [item.note, item.chord]) times.set(key, (times.get(key) ?? 0) + runs);
  }
  return ({ note, chord }) => times.get(note)! + times.get(chord)!;
}

/** Mean chance that the items of a stage are even at half the target, as what opens a stage asks for. */
function chanceAtHalf(learner: Learner, programme: Programme, stage: Stage, day: Day): number {
  const items = itemsOf(programme, stage);
  const half = (item: Item): Tempo => targetFor(programme, item) / 2;
  const sum = items.reduce((total, item) => total + chanceEven(learner, item, half(item), day), 0);
  return sum / items.length;
}

/** Under this chance on a stage the next one is not asked for: nobody is led to what is out of reach. */
const TOO_FAR = 0.3;

/** The stages that may be asked for: both hands alone first, and none above one that is out of reach. */
function stagesToProbe(learner: Learner, programme: Programme, day: Day): readonly Stage[] {
  const isPlayed = (stage: Stage): boolean =>
    itemsOf(programme, stage).some((item) => learner.runs[item.index]! > 0);
  const stages = stagesUpTo(programme);
  const alone = stages.slice(0, stageIndex('together.2'));
  if (!alone.every(isPlayed)) return alone.filter((stage) => !isPlayed(stage));
  const tooFar = stages.findIndex(
    (stage) => chanceAtHalf(learner, programme, stage, day) < TOO_FAR,
  );
  return tooFar < 0 ? stages : stages.slice(0, Math.max(alone.length, tooFar + 1));
}

/**
 * The next probing run: of all items that may be asked for and are not among `without`, the one that is expected to
 * lower the spread of all their reaches most; among equals the note and chord that were played least, then the order of
 * the deck. Null where nothing is left.
 */
export function nextProbe(
  learner: Learner,
  programme: Programme,
  { day, without }: { readonly day: Day; readonly without?: ReadonlySet<ItemId> },
): Probe | null {
  const deck = stagesUpTo(programme).flatMap((stage) => itemsOf(programme, stage));
  const played = timesPlayed(learner, deck);
  const number = dayNumber(day);
  const allowed = new Set<string>(stagesToProbe(learner, programme, day));
  // A second run of the same item would tell more of the shared part, but nothing of what other items have of their own.
  const isFresh = (item: Item): boolean =>
    allowed.has(item.way) &&
    learner.lastDay[item.index] !== number &&
    without?.has(item.id) !== true;
  const [first] = deck
    .filter(isFresh)
    .map((item) => ({
      item,
      // Rounded, so that equals are equal whatever the order of the sums.
      told: Math.round(1e9 * informationOf(learner, item, deck, number)),
      times: played(item),
    }))
    .toSorted((a, b) => b.told - a.told || a.times - b.times || a.item.index - b.item.index);
  if (first === undefined) return null;
  const { item } = first;
  const wish = Math.min(fastestFor(programme, item), reachOf(learner, item, day).tempo);
  return { item, tempo: playableTempo(wish, programme.grouping) };
}

/** A stage is taken as reached when its items are even at half the target with this mean chance. */
const REACHED = 0.7;

/** The highest stage that the probes say is reached: where the programme should begin. */
export function placedStage(learner: Learner, programme: Programme, day: Day): Stage {
  const stages = stagesUpTo(programme);
  const firstNotReached = stages.findIndex(
    (stage) => chanceAtHalf(learner, programme, stage, day) < REACHED,
  );
  return stages[firstNotReached < 0 ? stages.length - 1 : Math.max(0, firstNotReached - 1)]!;
}

/** How a stage stands: the middle of the reaches of its items, and one standard deviation of one of them around it. */
export interface StageReach {
  readonly stage: Stage;
  readonly tempo: Tempo;
  readonly low: Tempo;
  readonly high: Tempo;
}

/** Of each stage up to the highest that is asked for; geometric means. */
export const stageReaches = (
  learner: Learner,
  programme: Programme,
  day: Day,
): readonly StageReach[] =>
  stagesUpTo(programme).map((stage) => {
    const reaches = itemsOf(programme, stage).map((item) => reachOf(learner, item, day));
    const mean = (of: (reach: (typeof reaches)[number]) => Tempo): Tempo =>
      2 ** (reaches.reduce((sum, reach) => sum + Math.log2(of(reach)), 0) / reaches.length);
    return {
      stage,
      tempo: mean(({ tempo }) => tempo),
      low: mean(({ low }) => low),
      high: mean(({ high }) => high),
    };
  });
