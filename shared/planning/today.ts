/**
 * Today's list. Each entry is a round from one note, made of the chords that lack most tempo for the date per minute
 * of practice, or a single item; the next entry is another note; every tenth entry of a note goes back a stage.
 */
import { dayNumber } from '../log/day';
import type { Day } from '../log/events';
import { targetRange } from '../log/programme';
import { type ItemId, itemOf, type StartingNote, type Way } from '../music/deck';
import type { Tempo } from '../music/tempo';
import { cloneLearner } from '../learning/learner';
import { practise } from '../learning/practice';
import {
  bestRound,
  type Candidate,
  candidatesOf,
  type Planning as Base,
  singleOf,
  wholeRound,
} from './candidates';
import { coldRoundOn } from './cold-round';
import { datesAhead } from './dates';
import { isNothingNew } from './front';
import { joinedNotes } from './joining';
import { type LookBack, lookBackOf } from './look-back';
import { isTwinOfToday, mayFollow, type Placed } from './order';
import { reasonFor, weakestOf } from './reason-for';
import type { Reason } from './reasons';
import type { Student } from './student';
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

interface Planning extends Base {
  readonly notes: readonly StartingNote[];
  /** Which of the day's lists it is: 1 for the first. */
  readonly sitting: number;
  readonly entriesOf: Map<StartingNote, number>;
  readonly keys: Map<string, number>;
  /** What each note could offer next; forgotten when one of its entries is planned. */
  readonly candidates: Map<StartingNote, readonly Candidate[]>;
  /** What is on the list so far, in order. */
  readonly before: Placed[];
}

/** How often each item was played on a day before the list begins. */
function playedOn({ learner, lastRuns }: Student, day: Day): Map<ItemId, number> {
  const played = new Map<ItemId, number>();
  const number = dayNumber(day);
  for (const id of lastRuns.keys()) {
    const { index } = itemOf(id);
    if (learner.lastDay[index] === number) played.set(id, learner.runsThatDay[index]!);
  }
  return played;
}

function mayCome(planning: Planning, next: Candidate): boolean {
  const { student, day, before, sitting } = planning;
  if (!mayFollow(student.learner, before, next)) return false;
  return sitting === 1 || !isTwinOfToday(student.learner, dayNumber(day), next);
}

/** The starting notes that may come next. */
function nextNotes({ notes, before }: Planning): readonly StartingNote[] {
  const last = before.at(-1)?.note;
  return notes.length > 1 ? notes.filter((note) => note !== last) : notes;
}

function candidatesFor(planning: Planning, note: StartingNote): readonly Candidate[] {
  const candidates = planning.candidates.get(note) ?? candidatesOf(planning, note);
  planning.candidates.set(note, candidates);
  return candidates;
}

/** Seconds, about those of the shortest round. */
const TOO_SHORT = 60;

/**
 * What a candidate brings a second of those that are left: what would remain too short for a round counts as taken by it,
 * as single items bring little for their time.
 */
const rateWithin = ({ rate, seconds }: Candidate, left: number): number =>
  left - seconds < TOO_SHORT ? (rate * seconds) / left : rate;

/** The best that fits into the seconds left and may follow what is there; if none may, the best that fits. */
function bestOf(planning: Planning, seconds: number): Candidate | null {
  let leader: Candidate | null = null;
  let leaderInOrder: Candidate | null = null;
  const brings = (candidate: Candidate | null): number =>
    candidate === null ? -Infinity : rateWithin(candidate, seconds);
  for (const note of nextNotes(planning)) {
    for (const candidate of candidatesFor(planning, note)) {
      if (candidate.seconds > seconds) continue;
      if (brings(candidate) > brings(leader)) leader = candidate;
      const isBetter = brings(candidate) > brings(leaderInOrder);
      if (isBetter && mayCome(planning, candidate)) leaderInOrder = candidate;
    }
  }
  return leaderInOrder ?? leader;
}

/** On a day without anything new that comes only where too little was played before. */
function choose(planning: Planning, seconds: number): Candidate | null {
  const chosen = bestOf(planning, seconds);
  const isEnough = () =>
    nextNotes(planning).some((note) => candidatesFor(planning, note).length > 0);
  if (chosen !== null || !planning.isPlayedOnly || isEnough()) return chosen;
  return bestOf({ ...planning, isPlayedOnly: false, candidates: new Map() }, seconds);
}

/** A look-back has more than half of the chords, so that it finds what nobody expects to lag. */
const SHORTEST_BACK = 6;

/** A whole round at the target, before anything else, if it is the time for it. */
function coldRound(planning: Planning): Candidate | null {
  const { student, programme, day, sitting } = planning;
  const round = sitting === 1 ? coldRoundOn(student, programme, day) : null;
  return round && wholeRound(planning, round, targetRange(programme, round[1])[0]);
}

/** What a candidate is on the list for, where it is not its value. */
type Cause = 'cold' | 'wished' | LookBack | null;

function reasonOf(planning: Planning, candidate: Candidate, cause: Cause): Reason {
  const { student, programme, day, planned } = planning;
  const { items } = candidate;
  const { reach } = weakestOf(student, items, day);
  if (cause === 'cold' || cause === 'wished') return { kind: cause, reach };
  if (cause !== null) return { kind: 'look-back', ...cause, reach };
  const times = Math.min(...items.map((item) => planned.get(item.id) ?? 0));
  return times > 0
    ? { kind: 'again', times: times + 1, reach }
    : reasonFor(student, programme, items, day);
}

/** The first list of a day has keys as they are in old logs; a later one must not have the same. */
const keyOf = (name: string, times: number, sitting: number): string =>
  sitting === 1 ? `${name}.${times}` : `${name}.${times}.list-${sitting}`;

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
  const key = keyOf(name, times, planning.sitting);
  return { key, kind, note, way, items: items.map(({ id }) => id), tempo, seconds, reason };
}

function begin(student: Student, day: Day, sitting: number): Planning | null {
  const { programme } = student;
  if (programme === null) return null;
  return {
    student,
    programme,
    day,
    sitting,
    dates: datesAhead(programme, day),
    notes: joinedNotes(student, programme),
    learner: cloneLearner(student.learner),
    planned: playedOn(student, day),
    entriesOf: new Map([...student.noteCounts].map(([note, count]) => [note, count.entries])),
    keys: new Map(),
    candidates: new Map(),
    before: [],
    isPlayedOnly: isNothingNew(student, day),
  };
}

/**
 * The list for a day that fits the minutes. Takes the student as at the start of the list, so that it stays as it is
 * while its runs come in: of the day for the first list, and for a second sitting with what was played before it.
 */
export function planDay(student: Student, day: Day, minutes: number, sitting = 1): DayPlan {
  const planning = begin(student, day, sitting);
  if (planning === null) return { day, minutes, entries: [], seconds: 0 };
  const entries: Entry[] = [];
  let left = minutes * 60;
  const add = (candidate: Candidate | null, cause: Cause): boolean => {
    if (candidate === null || candidate.seconds > left) return false;
    left -= candidate.seconds;
    entries.push(enter(planning, candidate, cause));
    return true;
  };
  add(coldRound(planning), 'cold');
  for (const item of wishedOn(student, day)) add(singleOf(planning, item), 'wished');
  for (;;) {
    const chosen = choose(planning, left);
    if (chosen === null) break;
    const back = lookBackOf(student, chosen.note, planning.entriesOf);
    const round = back && bestRound(planning, [chosen.note, back.way], SHORTEST_BACK);
    if (!add(round, back)) add(chosen, null);
  }
  return { day, minutes, entries, seconds: minutes * 60 - left };
}
