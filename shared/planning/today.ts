/**
 * Today's list. Each entry is a round from one note, made of the chords that lack most tempo for the date per minute
 * of practice, or a single item; the next entry is another note; every fifth entry of a note goes back a stage.
 */
import { dayNumber } from '../log/day';
import type { Day } from '../log/events';
import type { Programme } from '../log/programme';
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
import { cloneLearner, type Learner } from '../learning/learner';
import { practise } from '../learning/practice';
import { workingTempo } from '../learning/prediction';
import { frontStage, isNothingNew } from './front';
import { lookBackWay } from './look-back';
import { mayFollow, type Placed } from './order';
import { reasonFor } from './reason-for';
import type { Reason } from './reasons';
import { notesOf, type Student } from './student';
import { valueOfRun } from './value';
import { wishedOn } from './wishes';

export interface Entry {
  /** Unique within the day and the same on every device: "d.right.2.1" is the first round from D, right hand. */
  readonly key: string;
  readonly kind: 'round' | 'single';
  readonly note: StartingNote;
  readonly way: Way;
  /** In the order in which they are played. */
  readonly items: readonly ItemId[];
  /** Notes per minute, with a whole metronome mark. */
  readonly tempo: Tempo;
  /** With getting ready and rating. */
  readonly seconds: number;
  readonly reason: Reason;
  /** To be gone through in the mind, without playing; it is not rated. */
  readonly isMental?: true;
}

export interface DayPlan {
  readonly day: Day;
  readonly minutes: number;
  readonly entries: readonly Entry[];
  readonly seconds: number;
}

/** Own estimates, in seconds: to read and find the first keys, and to rate one item. */
const ROUND_SETUP = 20;
const SINGLE_SETUP = 15;
const RATING = 2;
const SHORTEST_ROUND = 4;
const RUNS_A_DAY = 6;
/** Without a date, what a run is worth is measured four weeks ahead. */
const DAYS_AHEAD = 28;
/** Nothing is gained by asking for more than this above the target. */
const ABOVE_TARGET = 1.2;

interface Planning {
  readonly student: Student;
  readonly programme: Programme;
  readonly day: Day;
  /** Moves on with every entry that is planned. */
  readonly learner: Learner;
  readonly planned: Map<ItemId, number>;
  readonly entriesOf: Map<StartingNote, number>;
  readonly keys: Map<string, number>;
  /** What each note could offer next; forgotten when one of its entries is planned. */
  readonly candidates: Map<StartingNote, readonly Candidate[]>;
  /** What is on the list so far, in order. */
  readonly before: Placed[];
  /** After a long break and before the date nothing new is begun. */
  readonly isPlayedOnly: boolean;
}

interface Candidate {
  readonly kind: Entry['kind'];
  readonly note: StartingNote;
  readonly way: Way;
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

function targetOf(programme: Programme, way: Way): Tempo {
  if (way === 'right.4' || way === 'left.4') return programme.stages['together.4'].target;
  return programme.stages[way].target;
}

function isFree({ student, planned }: Planning, item: Item): boolean {
  return !student.aside.has(item.id) && (planned.get(item.id) ?? 0) < RUNS_A_DAY;
}

/**
 * Of each arpeggio the highest open stage is wanted, and lower ones that are asked for and have shown that they need
 * it; a lower stage that was never played is left to the look-back, as it has probably been learnt before.
 */
function isWanted({ student, programme, isPlayedOnly }: Planning, item: Item): boolean {
  const stage = stageIndex(item.way);
  const front = frontStage(student, item.arpeggioIndex, isPlayedOnly);
  if (stage === front) return true;
  const isKnown = student.learner.runs[item.index]! > 0;
  return stage < front && isKnown && programme.stages[STAGES[stage]!].asked;
}

function valued(planning: Planning, items: readonly Item[]): readonly Valued[] {
  const { learner, programme, day } = planning;
  const today = dayNumber(day);
  const set = programme.date === null ? 0 : dayNumber(programme.date);
  const date = set > today ? set : today + DAYS_AHEAD;
  return items
    .filter((item) => isFree(planning, item))
    .map((item) => {
      const target = targetOf(programme, item.way);
      return {
        item,
        value: valueOfRun(learner, item, target, { today, date }),
        tempo: Math.min(ABOVE_TARGET * target, workingTempo(learner, item, day)),
      };
    })
    .toSorted((a, b) => b.value - a.value || a.item.index - b.item.index);
}

/** Seconds of an entry, with getting ready and rating. */
export function entrySeconds(items: readonly Item[], tempo: Tempo, form: ContraryForm): number {
  const setup = items.length >= SHORTEST_ROUND ? ROUND_SETUP : SINGLE_SETUP;
  return setup + secondsOf(roundIntervals(items, form), tempo) + RATING * items.length;
}

function candidateOf(planning: Planning, chosen: readonly Valued[]): Candidate {
  const { grouping, contraryForm } = planning.programme;
  const tempo = playableTempo(
    lowerMiddle(chosen.map((one) => one.tempo).toSorted((a, b) => a - b)),
    grouping,
  );
  const kind = chosen.length >= SHORTEST_ROUND ? 'round' : 'single';
  const seconds = entrySeconds(
    chosen.map(({ item }) => item),
    tempo,
    contraryForm,
  );
  const value = chosen.reduce((sum, one) => sum + one.value, 0);
  const items = chosen.map((one) => one.item).toSorted((a, b) => a.index - b.index);
  const { note, way } = items[0]!;
  return { kind, note, way, items, tempo, seconds, rate: value / seconds };
}

/** Every prefix of at least four chords, best chords first, and every single item. */
function candidatesOf(planning: Planning, items: readonly Item[]): readonly Candidate[] {
  const wanted = items.filter((item) => isWanted(planning, item));
  const byValue = valued(planning, wanted);
  const singles = byValue.map((one) => candidateOf(planning, [one]));
  const rounds = byValue
    .slice(SHORTEST_ROUND - 1)
    .map((_, i) => candidateOf(planning, byValue.slice(0, SHORTEST_ROUND + i)));
  return [...rounds, ...singles];
}

/** The best that fits into the seconds left and may follow what is there; if none may, the best that fits. */
function choose(
  planning: Planning,
  notes: readonly StartingNote[],
  seconds: number,
): Candidate | null {
  let leader: Candidate | null = null;
  let leaderInOrder: Candidate | null = null;
  const learner = planning.student.learner;
  for (const note of notes) {
    let candidates = planning.candidates.get(note);
    if (candidates === undefined) {
      candidates = STAGES.flatMap((stage) => candidatesOf(planning, roundItems(note, stage)));
      planning.candidates.set(note, candidates);
    }
    for (const candidate of candidates) {
      if (candidate.seconds > seconds) continue;
      if (leader === null || candidate.rate > leader.rate) leader = candidate;
      const isBetter = leaderInOrder === null || candidate.rate > leaderInOrder.rate;
      if (isBetter && mayFollow(learner, planning.before, candidate)) leaderInOrder = candidate;
    }
  }
  return leaderInOrder ?? leader;
}

/** A whole round one stage back in place of what was chosen, if its turn has come and it fits. */
function lookBack(planning: Planning, chosen: Candidate, seconds: number): Candidate | null {
  const way = lookBackWay(planning.student, chosen.note, planning.entriesOf);
  if (way === null) return null;
  const items = valued(planning, roundItems(chosen.note, way));
  if (items.length < SHORTEST_ROUND) return null;
  const candidate = candidateOf(planning, items);
  return candidate.seconds <= seconds ? candidate : null;
}

/** What a candidate is on the list for, where it is not its value. */
type Cause = 'wished' | 'look-back' | null;

function reasonOf(planning: Planning, candidate: Candidate, cause: Cause): Reason {
  const { student, programme, day, planned } = planning;
  const { items, way } = candidate;
  if (cause === 'wished') return { kind: 'wished' };
  if (cause === 'look-back') return { kind: 'look-back', way };
  const times = Math.min(...items.map((item) => planned.get(item.id) ?? 0));
  return times > 0
    ? { kind: 'again', times: times + 1 }
    : reasonFor(student, programme, items, day);
}

/** Puts a candidate on the list. */
function enter(planning: Planning, candidate: Candidate, cause: Cause): Entry {
  const { kind, note, way, items, tempo, seconds } = candidate;
  const reason = reasonOf(planning, candidate, cause);
  for (const item of items) {
    practise(planning.learner, item, dayNumber(planning.day));
    planning.planned.set(item.id, (planning.planned.get(item.id) ?? 0) + 1);
  }
  planning.candidates.delete(note);
  planning.before.push(candidate);
  planning.entriesOf.set(note, (planning.entriesOf.get(note) ?? 0) + 1);
  const name = kind === 'round' ? `${note}.${way}` : items[0]!.id;
  const times = (planning.keys.get(name) ?? 0) + 1;
  planning.keys.set(name, times);
  const ids = items.map((item) => item.id);
  return { key: `${name}.${times}`, kind, note, way, items: ids, tempo, seconds, reason };
}

/**
 * The list for a day that fits the minutes. Takes the student as at the start of the day, so that the list stays as it
 * is while the day's runs come in.
 */
export function planDay(student: Student, day: Day, minutes: number): DayPlan {
  const { programme } = student;
  if (programme === null) return { day, minutes, entries: [], seconds: 0 };
  const planning: Planning = {
    student,
    programme,
    day,
    learner: cloneLearner(student.learner),
    planned: new Map(),
    entriesOf: new Map([...student.noteCounts].map(([note, count]) => [note, count.entries])),
    keys: new Map(),
    candidates: new Map(),
    before: [],
    isPlayedOnly: isNothingNew(student, day),
  };
  const notes = notesOf(programme);
  const entries: Entry[] = [];
  let left = minutes * 60;
  for (const item of wishedOn(student, day)) {
    const candidate = candidateOf(planning, valued(planning, [item]));
    if (candidate.seconds > left) break;
    left -= candidate.seconds;
    entries.push(enter(planning, candidate, 'wished'));
  }
  for (;;) {
    const last = entries.at(-1)?.note;
    const others = notes.length > 1 ? notes.filter((note) => note !== last) : notes;
    const chosen = choose(planning, others, left);
    if (chosen === null) break;
    const back = lookBack(planning, chosen, left);
    const entry = enter(planning, back ?? chosen, back === null ? null : 'look-back');
    left -= entry.seconds;
    entries.push(entry);
  }
  return { day, minutes, entries, seconds: minutes * 60 - left };
}
