/** Which drills to put before today's rounds: one or two, for what the last ratings point at. */
import { dayNumber, daysBetween } from '../../log/day';
import { type Day, EVEN, type Fluency } from '../../log/events';
import { handsOf, type Item, itemAt, itemOf, stageIndex } from '../../music/deck';
import type { Hand } from '../../music/fingering/types';
import { meanOn } from '../../learning/prediction';
import { notesOf, type Student } from '../student';
import { type DrillId, type DrillKind, handOfDrill, JOIN_KINDS } from './kinds';
import { placeInDrill } from './late-note';

export interface DrillOffer {
  readonly drill: DrillId;
  /** The run that points at it. */
  readonly item: Item;
  readonly fluency: Fluency;
  readonly day: Day;
}

/** Seconds to keep free for a drill: to find the first keys and to play it some times (P). */
export const DRILL_SECONDS = 90;
/** Minutes from which a day has room for one drill, and for two (P). */
const ROOM = [10, 25] as const;
/** Days after which a rating says little about today (P). */
const FRESH = 10;

/** What helps, by how the run came out, one after the other from day to day. Common practice, no source. */
const REMEDIES: Readonly<Record<Exclude<Fluency, 3 | 4>, readonly DrillKind[]>> = {
  0: ['chords', 'join', 'transfer'],
  1: ['join', 'out-and-back', 'groups'],
  2: ['long-short', 'short-long', 'accents', 'silent-thumb'],
};

interface Fault {
  readonly item: Item;
  readonly fluency: Exclude<Fluency, 3 | 4>;
  readonly day: Day;
}

/** The hand that holds the other back where both have played: the one whose own reach is lower. */
function handOf({ learner }: Student, item: Item, day: Day): Hand {
  const hands = handsOf(item.way);
  if (hands !== 'together') return hands;
  const meanOf = (hand: Hand) =>
    meanOn(learner, itemAt(item.arpeggioIndex, `${hand}.2`), dayNumber(day));
  return meanOf('right') < meanOf('left') ? 'right' : 'left';
}

function faultsOf(student: Student, day: Day): readonly Fault[] {
  const notes = student.programme === null ? [] : notesOf(student.programme);
  const faults = [...student.lastRuns].flatMap(([id, last]): readonly Fault[] => {
    const item = itemOf(id);
    const isCurrent =
      notes.includes(item.note) &&
      !student.aside.has(id) &&
      stageIndex(item.way) <= student.stages.open[item.arpeggioIndex]! &&
      daysBetween(last.day, day) <= FRESH;
    if (!isCurrent || last.fluency >= EVEN) return [];
    return [{ item, fluency: last.fluency as Fault['fluency'], day: last.day }];
  });
  return faults.toSorted(
    (a, b) =>
      a.fluency - b.fluency ||
      (a.day < b.day ? 1 : a.day > b.day ? -1 : a.item.index - b.item.index),
  );
}

/** For the note that was late, where the run was heard; otherwise for the hand that lags. */
function drillFor(student: Student, item: Item, fluency: Fault['fluency'], day: Day): DrillId {
  const late = student.lateNotes.get(item.id);
  const hand = late?.hand ?? handOf(student, item, day);
  const times = student.drills.get(`${item.arpeggio}.${hand}`)?.times ?? 0;
  const start: `${string}.${Hand}` = `${item.arpeggio}.${hand}`;
  const inTurn = <Kind extends DrillKind>(kinds: readonly Kind[]): Kind =>
    kinds[times % kinds.length]!;
  if (late === undefined) return `${start}.${inTurn(REMEDIES[fluency])}`;
  const place = placeInDrill(item, late.step);
  const drill = `${start}.${inTurn(JOIN_KINDS)}` as const;
  return place === null ? drill : `${drill}.${place}`;
}

/**
 * The drills for a day, for the worst of the recent runs first and no two from one starting note. Takes the student as at
 * the start of the day, so that the offer stays as it is while the day's runs come in.
 */
export function offerDrills(student: Student, day: Day, minutes: number): readonly DrillOffer[] {
  const most = ROOM.filter((least) => minutes >= least).length;
  const offers: DrillOffer[] = [];
  for (const { item, fluency, day: ratedOn } of faultsOf(student, day)) {
    if (offers.length === most) break;
    if (offers.some((other) => other.item.note === item.note)) continue;
    offers.push({ drill: drillFor(student, item, fluency, day), item, fluency, day: ratedOn });
  }
  return offers;
}

/** Whether a drill has been played on a day. */
export function isPlayed({ drills }: Student, id: DrillId, day: Day): boolean {
  const work = drills.get(handOfDrill(id));
  return work?.day === day && work.drill === id;
}
