/**
 * Look-back: every fifth entry of a note goes back to a lower stage, in turn. The share is fixed and not earned: the
 * model believes that stages support each other, and only this checks it.
 */
import { EVEN } from '../log/events';
import { roundItems, STAGES, type StartingNote, type Way } from '../music/deck';
import type { Student } from './student';

const EVERY = 5;
/** A single hand is worth practising over four octaves after so many runs that did not come out even. */
const STUCK_AFTER_RUNS = 4;

/** Whether most of a note's arpeggios that were tried enough over four octaves together were last less than even. */
function isStuckAtFour(student: Student, note: StartingNote): boolean {
  const tried = roundItems(note, 'together.4').filter(
    (item) => student.learner.runs[item.index]! >= STUCK_AFTER_RUNS,
  );
  const uneven = tried.filter((item) => student.lastRuns.get(item.id)!.fluency < EVEN);
  return tried.length > 0 && uneven.length * 2 > tried.length;
}

/** The highest stage that is open for any arpeggio of a note. */
const frontOf = (student: Student, note: StartingNote): number =>
  Math.max(...roundItems(note, STAGES[0]).map((item) => student.stages.open[item.arpeggioIndex]!));

/**
 * The way of playing that a note goes back to now, or null if it is not time or there is none below. `entriesOf` counts
 * the entries that each note has had so far.
 */
export function lookBackWay(
  student: Student,
  note: StartingNote,
  entriesOf: ReadonlyMap<StartingNote, number>,
): Way | null {
  const entries = entriesOf.get(note) ?? 0;
  const front = frontOf(student, note);
  if (entries % EVERY !== EVERY - 1 || front === 0) return null;
  const lower: Way[] = STAGES.slice(0, Math.min(front, 3));
  if (front >= 3 && isStuckAtFour(student, note)) lower.splice(0, 2, 'right.4', 'left.4');
  return lower[Math.floor(entries / EVERY) % lower.length]!;
}
