/** What could go on the list next: the rounds and single items of a note, with what they bring for their time. */
import { dayNumber } from '../log/day';
import type { Day } from '../log/events';
import { type Programme, targetFor } from '../log/programme';
import {
  type Item,
  type ItemId,
  roundItems,
  STAGES,
  stageIndex,
  type StartingNote,
  type Way,
} from '../music/deck';
import { type ContraryForm, roundIntervals } from '../music/sequence';
import { playableTempo, secondsOf, type Tempo } from '../music/tempo';
import type { Learner } from '../learning/learner';
import { workingTempo } from '../learning/prediction';
import { frontStage } from './front';
import { lastStageOf } from './stages';
import type { Student } from './student';
import { valueOfRun } from './value';

/** Own estimates, in seconds: to read and find the first keys, and to rate one item. */
const ROUND_SETUP = 20;
const SINGLE_SETUP = 15;
const RATING = 2;
export const SHORTEST_ROUND = 4;
const RUNS_A_DAY = 6;
/** Nothing is gained by asking for more than this above the target. */
const ABOVE_TARGET = 1.2;

/** A day as it is being planned. */
export interface Planning {
  readonly student: Student;
  readonly programme: Programme;
  readonly day: Day;
  /** Day numbers on which a run is judged. */
  readonly dates: readonly number[];
  /** Moves on with every entry that is planned. */
  readonly learner: Learner;
  /** How often each item comes today, what was played before the list included. */
  readonly planned: Map<ItemId, number>;
  /** After a long break and before the date nothing new is begun. */
  readonly isPlayedOnly: boolean;
}

export interface Candidate {
  readonly kind: 'round' | 'single';
  readonly note: StartingNote;
  readonly way: Way;
  /** In the order in which they are played. */
  readonly items: readonly Item[];
  readonly tempo: Tempo;
  readonly seconds: number;
  /** Expected fall of the shortfall a second. */
  readonly rate: number;
}

interface Valued {
  readonly item: Item;
  readonly value: number;
  readonly tempo: Tempo;
}

/** The 40 % quantile, of an ascending list. */
const lowerMiddle = (sorted: readonly number[]): number =>
  sorted[Math.floor(0.4 * (sorted.length - 1))]!;

/** Nothing faster is asked for. Notes per minute. */
export const fastestFor = (programme: Programme, item: Item): Tempo =>
  ABOVE_TARGET * targetFor(programme, item);

/** Whether the programme asks for an item, or for its chord at a higher stage; one hand over four octaves serves both. */
export const isOnTheWay = (programme: Programme, { way, chord }: Item): boolean => {
  const stage = stageIndex(way) < 0 ? stageIndex('together.4') : stageIndex(way);
  return stage <= lastStageOf(programme, chord);
};

const isFree = ({ student, programme, planned }: Planning, item: Item): boolean =>
  isOnTheWay(programme, item) &&
  !student.aside.has(item.id) &&
  (planned.get(item.id) ?? 0) < RUNS_A_DAY;

/**
 * Of each arpeggio the highest open stage is wanted, and lower ones that are asked for and have shown that they need
 * it; a lower stage that was never played is left to the look-back, as it has probably been learnt before.
 */
function isWanted({ student, programme, isPlayedOnly }: Planning, item: Item): boolean {
  const stage = stageIndex(item.way);
  const open = frontStage(student, item.arpeggioIndex, isPlayedOnly);
  const front = Math.min(open, lastStageOf(programme, item.chord));
  if (stage === front) return true;
  const isKnown = student.learner.runs[item.index]! > 0;
  return stage < front && isKnown && programme.stages[STAGES[stage]!].asked;
}

/** The fall of an item's shortfall by one more run today, summed over the dates. */
function valueOf({ learner, day, dates }: Planning, item: Item, target: Tempo): number {
  const today = dayNumber(day);
  return dates.reduce((sum, date) => sum + valueOfRun(learner, item, target, { today, date }), 0);
}

function valuedOf(planning: Planning, item: Item): Valued {
  const { learner, programme, day } = planning;
  return {
    item,
    value: valueOf(planning, item, targetFor(programme, item)),
    tempo: Math.min(fastestFor(programme, item), workingTempo(learner, item, day)),
  };
}

const valued = (planning: Planning, items: readonly Item[]): readonly Valued[] =>
  items
    .filter((item) => isFree(planning, item))
    .map((item) => valuedOf(planning, item))
    .toSorted((a, b) => b.value - a.value || a.item.index - b.item.index);

/** Seconds of an entry, with getting ready and rating. */
export function entrySeconds(items: readonly Item[], tempo: Tempo, form: ContraryForm): number {
  const setup = items.length >= SHORTEST_ROUND ? ROUND_SETUP : SINGLE_SETUP;
  return setup + secondsOf(roundIntervals(items, form), tempo) + RATING * items.length;
}

/** Of items with their values, in the order of the deck and at a tempo that suits most of them, or one that is given. */
function candidateOf(planning: Planning, chosen: readonly Valued[], given?: Tempo): Candidate {
  const { grouping, contraryForm } = planning.programme;
  const middle = lowerMiddle(chosen.map((one) => one.tempo).toSorted((a, b) => a - b));
  const tempo = playableTempo(given ?? middle, grouping);
  const items = chosen.map((one) => one.item).toSorted((a, b) => a.index - b.index);
  const seconds = entrySeconds(items, tempo, contraryForm);
  const value = chosen.reduce((sum, one) => sum + one.value, 0);
  const { note, way } = items[0]!;
  const kind = chosen.length >= SHORTEST_ROUND ? 'round' : 'single';
  return { kind, note, way, items, tempo, seconds, rate: value / seconds };
}

/** What a teacher asks for, whether or not the programme does. */
export const singleOf = (planning: Planning, item: Item): Candidate =>
  candidateOf(planning, [valuedOf(planning, item)]);

/** All free chords of a note in one way; null if they are too few for a round. */
export function wholeRound(
  planning: Planning,
  [note, way]: readonly [StartingNote, Way],
  tempo?: Tempo,
): Candidate | null {
  const chosen = valued(planning, roundItems(note, way));
  return chosen.length < SHORTEST_ROUND ? null : candidateOf(planning, chosen, tempo);
}

/** Every round of at least so many chords, those first that lack most. */
const roundsFrom = (
  planning: Planning,
  byValue: readonly Valued[],
  shortest: number,
): readonly Candidate[] =>
  byValue.slice(shortest - 1).map((_, i) => candidateOf(planning, byValue.slice(0, shortest + i)));

/** The round of a note in one way that brings most for its time, of at least so many chords; null if too few are free. */
export function bestRound(
  planning: Planning,
  [note, way]: readonly [StartingNote, Way],
  shortest: number,
): Candidate | null {
  const rounds = roundsFrom(planning, valued(planning, roundItems(note, way)), shortest);
  return rounds.reduce<Candidate | null>(
    (best, one) => (best === null || one.rate > best.rate ? one : best),
    null,
  );
}

/** Rounds of at least four chords, and every single item. */
function candidatesIn(planning: Planning, items: readonly Item[]): readonly Candidate[] {
  const wanted = items.filter((item) => isWanted(planning, item));
  const byValue = valued(planning, wanted);
  const singles = byValue.map((one) => candidateOf(planning, [one]));
  return [...roundsFrom(planning, byValue, SHORTEST_ROUND), ...singles];
}

/** What a note could offer next. */
export const candidatesOf = (planning: Planning, note: StartingNote): readonly Candidate[] =>
  STAGES.flatMap((stage) => candidatesIn(planning, roundItems(note, stage)));
