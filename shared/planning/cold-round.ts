/** As in the examination: in the week before it a whole round cold, at the target (rule COLD of RULES.md). */
import type { Day } from '../log/events';
import { askedStages, asksFor, type Programme, targetFor } from '../log/programme';
import { roundItems, type Stage, type StartingNote } from '../music/deck';
import { chanceEven } from '../learning/prediction';
import { SHORTEST_ROUND } from './candidates';
import { daysOfEve } from './dates';
import { notesOf, type Student } from './student';

/** A round is nearly ready when its chords come out even at the target with this mean chance. */
const NEARLY_READY = 0.5;

function isNearlyReady(student: Student, note: StartingNote, stage: Stage, day: Day): boolean {
  const { learner, programme, aside } = student;
  const items = roundItems(note, stage).filter(
    (item) => asksFor(programme!, stage, item.chord) && !aside.has(item.id),
  );
  if (items.length < SHORTEST_ROUND) return false;
  if (items.some((item) => learner.runs[item.index] === 0)) return false;
  const sum = items.reduce(
    (total, item) => total + chanceEven(learner, item, targetFor(programme!, item), day),
    0,
  );
  return sum >= NEARLY_READY * items.length;
}

/** The note and stage to be played cold on a day, another note each day; null if it is not the time or none is near. */
export function coldRoundOn(
  student: Student,
  programme: Programme,
  day: Day,
): readonly [StartingNote, Stage] | null {
  const days = daysOfEve(programme, day);
  const stage = askedStages(programme).at(-1);
  if (days === null || days === 0 || stage === undefined) return null;
  const ready = notesOf(programme).filter((note) => isNearlyReady(student, note, stage, day));
  return ready.length === 0 ? null : [ready[days % ready.length]!, stage];
}
