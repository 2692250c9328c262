/**
 * Look-back: every tenth entry of a note goes back to a lower stage, in turn, while one hand lags behind the other not to
 * that other one, and not to two octaves together where these come anyway. The share is fixed and not earned: the model
 * believes that stages support each other, and only this checks it.
 */
import { EVEN } from '../log/events';
import { roundItems, STAGES, type StartingNote, type Way } from '../music/deck';
import { heldLevel } from '../learning/prediction';
import type { Student } from './student';

const EVERY = 10;
/** Days within which two octaves together need no look-back where they came for the sake of four. */
const LATELY = 10;
/** One hand lags when its tempo over two octaves is so much below the other's, in octaves: about a seventh (own choice). */
const LAG = 0.2;
/** A single hand is worth practising over four octaves after so many runs that did not come out even. */
const STUCK_AFTER_RUNS = 4;
const WHERE_STUCK: readonly Way[] = ['right.4', 'left.4', 'together.2'];

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

/** The hand that lags behind the other over two octaves of a note, of the chords that both have played; null for none. */
function laggingHand({ learner }: Student, note: StartingNote): Way | null {
  const left = roundItems(note, 'left.2');
  const gaps = roundItems(note, 'right.2').flatMap((one, i) => {
    const other = left[i]!;
    const isKnown = learner.runs[one.index]! > 0 && learner.runs[other.index]! > 0;
    return isKnown ? [heldLevel(learner, one) - heldLevel(learner, other)] : [];
  });
  if (gaps.length === 0) return null;
  const gap = gaps.reduce((sum, one) => sum + one, 0) / gaps.length;
  if (gap > LAG) return 'left.2';
  return gap < -LAG ? 'right.2' : null;
}

/** Whether a stage of a note was played in the last days of practice. */
function cameLately({ learner }: Student, note: StartingNote, way: Way): boolean {
  const last = Math.max(...roundItems(note, way).map(({ index }) => learner.lastDay[index]!));
  return last > learner.clock[0]! - LATELY;
}

export interface LookBack {
  readonly way: Way;
  /** Whether it is one hand, and lags behind the other. */
  readonly isLagging: boolean;
}

/** Where a note may go back to, lowest stage first. */
function waysBack(student: Student, note: StartingNote, lagging: Way | null): readonly Way[] {
  const front = frontOf(student, note);
  if (front >= 3 && isStuckAtFour(student, note)) return WHERE_STUCK;
  const below = STAGES.slice(0, Math.min(front, 3));
  // Before the hands are together there is no hand to wait for.
  if (lagging === null || front < 2) return below;
  return below.filter((way) => way === lagging || way === 'together.2');
}

/**
 * What a note goes back to now, or null if it is not time or there is nothing below. `entriesOf` counts the entries that
 * each note has had so far.
 */
export function lookBackOf(
  student: Student,
  note: StartingNote,
  entriesOf: ReadonlyMap<StartingNote, number>,
): LookBack | null {
  const entries = entriesOf.get(note) ?? 0;
  if (entries % EVERY !== EVERY - 1) return null;
  const lagging = laggingHand(student, note);
  const ways = waysBack(student, note, lagging);
  if (ways.length === 0) return null;
  const way = ways[Math.floor(entries / EVERY) % ways.length]!;
  if (way === 'together.2' && cameLately(student, note, way)) return null;
  return { way, isLagging: way === lagging };
}
