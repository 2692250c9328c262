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
import { servedBy } from '../learning/practice';
import { frontStage } from './front';
import { lastStageOf } from './stages';
import type { Student } from './student';
import { valueOfRun, valueOfService } from './value';

/** Own estimates, in seconds: to read and find the first keys, and to rate one item. */
const ROUND_SETUP = 20;
const SINGLE_SETUP = 15;
const RATING = 2;
export const SHORTEST_ROUND = 4;
const RUNS_A_DAY = 6;
/** Nothing is gained by asking for more than this above the target. */
const ABOVE_TARGET = 1.2;
/** Days for which it is believed that two octaves serve four, without a run of four that could show it. */
const UNSHOWN = 7;

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

/** The item that a run of another one serves, if that is worked on and was played lately enough to show that it is served. */
function servedIn({ student, programme, learner }: Planning, item: Item): Item | null {
  const served = servedBy(learner, item);
  if (served === null || student.aside.has(served.id)) return null;
  if (learner.clock[0]! - learner.lastDay[served.index]! >= UNSHOWN) return null;
  return isOnTheWay(programme, served) ? served : null;
}

/**
 * How an item stands to the work on its arpeggio. At the highest open stage it is an aim in itself, and below if it is
 * asked for and has shown that it needs it; what was never played there is left to the look-back, as it has probably
 * been learnt before. Or it serves another one, after that was played itself: nobody gets to four octaves by two alone.
 */
function standingOf(planning: Planning, item: Item): 'aim' | 'service' | null {
  const { student, programme, isPlayedOnly } = planning;
  const stage = stageIndex(item.way);
  const open = frontStage(student, item.arpeggioIndex, isPlayedOnly);
  const front = Math.min(open, lastStageOf(programme, item.chord));
  if (stage === front) return 'aim';
  if (stage > front || student.learner.runs[item.index] === 0) return null;
  if (programme.stages[STAGES[stage]!].asked) return 'aim';
  const served = servedIn(planning, item);
  if (served === null) return null;
  const timesOf = ({ id }: Item): number => planning.planned.get(id) ?? 0;
  return timesOf(item) < timesOf(served) ? 'service' : null;
}

/** The fall of shortfalls by one more run today, summed over the dates: of what it serves, and of the item's own. */
function valueOf(planning: Planning, item: Item, isAim: boolean): number {
  const { learner, programme, day, dates } = planning;
  const today = dayNumber(day);
  const served = servedIn(planning, item);
  return dates.reduce((sum, date) => {
    const horizon = { today, date };
    const own = isAim ? valueOfRun(learner, item, targetFor(programme, item), horizon) : 0;
    if (served === null) return sum + own;
    const target = targetFor(programme, served);
    return sum + own + valueOfService(learner, [item, served], target, horizon);
  }, 0);
}

function valuedOf(planning: Planning, item: Item, isAim = true): Valued {
  const { learner, programme, day } = planning;
  return {
    item,
    value: valueOf(planning, item, isAim),
    tempo: Math.min(fastestFor(programme, item), workingTempo(learner, item, day)),
  };
}

const byValue = (a: Valued, b: Valued): number => b.value - a.value || a.item.index - b.item.index;

const valued = (planning: Planning, items: readonly Item[]): readonly Valued[] =>
  items
    .filter((item) => isFree(planning, item))
    .map((item) => valuedOf(planning, item))
    .toSorted(byValue);

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
  sorted: readonly Valued[],
  shortest: number,
): readonly Candidate[] =>
  sorted.slice(shortest - 1).map((_, i) => candidateOf(planning, sorted.slice(0, shortest + i)));

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
  const wanted = items
    .flatMap((item) => {
      const standing = isFree(planning, item) ? standingOf(planning, item) : null;
      return standing === null ? [] : [valuedOf(planning, item, standing === 'aim')];
    })
    .toSorted(byValue);
  const singles = wanted.map((one) => candidateOf(planning, [one]));
  return [...roundsFrom(planning, wanted, SHORTEST_ROUND), ...singles];
}

/** What a note could offer next. */
export const candidatesOf = (planning: Planning, note: StartingNote): readonly Candidate[] =>
  STAGES.flatMap((stage) => candidatesIn(planning, roundItems(note, stage)));
