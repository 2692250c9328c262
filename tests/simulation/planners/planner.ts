/** What the lab asks of a way of planning, and how its tasks are costed: the same for all of them. */
import type { Day, Fluency } from '../../../shared/log/events';
import type { Programme } from '../../../shared/log/programme';
import {
  type Item,
  roundItems,
  STAGES,
  type StartingNote,
  type Way,
  WHITE_NOTES,
} from '../../../shared/music/deck';
import { playableTempo, type Tempo } from '../../../shared/music/tempo';
import { workingTempo } from '../../../shared/learning/prediction';
import type { Student } from '../../../shared/planning/student';
import { entrySeconds } from '../../../shared/planning/candidates';
import type { Learner } from '../learner';

/** Items played one after another at one tempo; several are a round. */
export interface Task {
  readonly key: string | null;
  readonly items: readonly Item[];
  readonly tempo: Tempo;
  readonly seconds: number;
}

export interface Morning {
  readonly student: Student;
  readonly day: Day;
  readonly number: number;
  /** Days of practice before this one. */
  readonly practised: number;
  readonly seconds: number;
  /** Which of the day's sittings it is: 1 for the first. */
  readonly sitting: number;
}

export interface PlayedRun {
  readonly number: number;
  readonly tempo: Tempo;
}

/** Made anew for each learner, so it may keep a memory of its own. */
export interface Planner {
  /** Taken one by one: the next may depend on what was noted of the one before. */
  plan(morning: Morning): Iterable<Task>;
  noteRun?(item: Item, fluency: Fluency, run: PlayedRun): void;
}

/** Only the oracle and the app that is told look at the learner. */
export type MakePlanner = (learner: Learner, share: () => number, programme: Programme) => Planner;

export const SHORTEST_ROUND = 4;

const GROUPING = 4;
const ABOVE_TARGET = 1.2;

const targetOf = (student: Student, way: Way): Tempo =>
  student.programme!.stages[way === 'right.4' || way === 'left.4' ? 'together.4' : way].target;

/**
 * Baselines are given the app's own tempi, so that what is compared is the choice alone: a tempo at which about eight
 * in ten should come out even.
 */
export const tempoOf = ({ student, day }: Morning, item: Item): Tempo =>
  Math.min(ABOVE_TARGET * targetOf(student, item.way), workingTempo(student.learner, item, day));

/** One for all items of a round: the 40 % quantile. */
export const roundTempo = (tempi: readonly Tempo[]): Tempo =>
  playableTempo(tempi.toSorted((a, b) => a - b)[Math.floor(0.4 * (tempi.length - 1))]!, GROUPING);

export const taskOf = (morning: Morning, items: readonly Item[]): Task =>
  costed(items, roundTempo(items.map((item) => tempoOf(morning, item))));

/** With the app's own estimates of the time between runs. */
export const costed = (items: readonly Item[], tempo: Tempo): Task => ({
  key: null,
  items,
  tempo,
  seconds: entrySeconds(items, tempo, 'formula'),
});

/** The highest stage to which most of a note's arpeggios have come: a teacher moves the whole note. */
export function stageOf(student: Student, note: StartingNote): Way {
  const open = roundItems(note, 'right.2')
    .map((item) => student.stages.open[item.arpeggioIndex]!)
    .toSorted((a, b) => b - a);
  return STAGES[open[5]!]!;
}

/** Adds rounds in the order given until the time is up; the last one is cut to the chords that fit. */
export function fill(
  morning: Morning,
  next: (place: number) => readonly [StartingNote, Way],
): readonly Task[] {
  const tasks: Task[] = [];
  let left = morning.seconds;
  for (;;) {
    const [note, way] = next(tasks.length);
    const items = roundItems(note, way);
    let task = taskOf(morning, items);
    for (let n = items.length - 1; task.seconds > left && n >= SHORTEST_ROUND; n--) {
      task = taskOf(morning, items.slice(0, n));
    }
    if (task.seconds > left) return tasks;
    left -= task.seconds;
    tasks.push({ ...task, key: `${note}.${way}.${tasks.length}` });
  }
}

export const NOTES = WHITE_NOTES;
