/** Which entry may follow which, whatever its value: rules TWIN and HANDS of RULES.md. */
import type { Learner } from '../learning/learner';
import {
  handsOf,
  type Item,
  roundItems,
  STARTING_NOTES,
  type StartingNote,
  type Way,
} from '../music/deck';
import { pitchClassOf } from '../music/spelling';

export interface Placed {
  readonly note: StartingNote;
  readonly way: Way;
  readonly items: readonly Item[];
}

/** An item with fewer runs than this is fresh: what it has gained overnight is lost to a near twin on the same day. */
const FRESH_RUNS = 3;
/** Semitones between the starting notes of near twins, played in the same way: the same chord, hardly moved. */
const NEAR = 2;
/** So many entries of one hand in a row, then the other or both. */
const ONE_HAND = 2;

function areNear(a: StartingNote, b: StartingNote): boolean {
  const distance = Math.abs(pitchClassOf(a) - pitchClassOf(b));
  return Math.min(distance, 12 - distance) <= NEAR;
}

/** Whether a note and way would be the near twin of an entry that has fresh items. */
const isNearTwin = (learner: Learner, last: Placed, next: Placed): boolean =>
  last.way === next.way &&
  areNear(last.note, next.note) &&
  last.items.some((item) => learner.runs[item.index]! < FRESH_RUNS);

const isPlayedOn = (learner: Learner, day: number, note: StartingNote, way: Way): boolean =>
  roundItems(note, way).some(({ index }) => learner.lastDay[index] === day);

/** What an earlier list of the day has left fresh: its items have their evening turn, their near twins do not. */
export function isTwinOfToday(learner: Learner, day: number, { note, way }: Placed): boolean {
  if (isPlayedOn(learner, day, note, way)) return false;
  return STARTING_NOTES.some(
    (other) =>
      areNear(other, note) &&
      roundItems(other, way).some(
        ({ index }) => learner.lastDay[index] === day && learner.runs[index]! < FRESH_RUNS,
      ),
  );
}

function tiresOneHand(before: readonly Placed[], next: Placed): boolean {
  const hands = handsOf(next.way);
  if (hands === 'together' || before.length < ONE_HAND) return false;
  return before.slice(-ONE_HAND).every(({ way }) => handsOf(way) === hands);
}

/** Whether an entry may come after those before it. `learner` is that of the start of the day. */
export function mayFollow(learner: Learner, before: readonly Placed[], next: Placed): boolean {
  const last = before.at(-1);
  if (last === undefined) return true;
  return !isNearTwin(learner, last, next) && !tiresOneHand(before, next);
}
