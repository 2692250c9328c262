/**
 * Baselines without any model: each note has its stage and its place on the metronome, and both move by what was heard in
 * the round, as teachers do it (common practice, no source). The planner is asked again after each round. The numbers
 * marked "tuned" are the best of eight sets on a tuning seed, for the rotation with look-back.
 */
import { EVEN, type Fluency } from '../../../shared/log/events';
import type { Programme } from '../../../shared/log/programme';
import {
  type Item,
  roundItems,
  type Stage,
  STAGES,
  stageIndex,
  type StartingNote,
} from '../../../shared/music/deck';
import type { Tempo } from '../../../shared/music/tempo';
import { topStage } from '../../../shared/planning/stages';
import { notesOf } from '../../../shared/planning/student';
import { costed, type MakePlanner, type Morning, SHORTEST_ROUND, type Task } from './planner';

/** The marks of a metronome with a pendulum. */
const MARKS = [
  40, 42, 44, 46, 48, 50, 52, 54, 56, 58, 60, 63, 66, 69, 72, 76, 80, 84, 88, 92, 96, 100, 104, 108,
  112, 116, 120, 126, 132, 138, 144, 152, 160, 168, 176, 184, 192, 200, 208,
];
/** Notes a minute: two to the beat up to 120, then four to the beat. */
const NOTCHES: readonly Tempo[] = [
  ...MARKS.filter((mark) => mark <= 120).map((mark) => 2 * mark),
  ...MARKS.filter((mark) => mark > 60).map((mark) => 4 * mark),
];
const ABOVE_TARGET = 1.2;
/** Share of a round that came out even: from here up a notch, and two when all of it; below that down a notch (tuned). */
const UP = 0.9;
const DOWN = 0.6;
/** A stage opens when most chords were even at half the target on two days. */
const DAYS_TO_HOLD = 2;
const MOST = 6;
/** Notches by which a note begins a stage below its place on the stage before (tuned). */
const BEGIN_LOWER = 4;
const LOOK_BACK_EVERY = 5;

const notchOf = (tempo: Tempo): number =>
  NOTCHES.reduce((best, notch, i) => (notch <= tempo ? i : best), 0);

/** Where one note stands. */
class Place {
  #stage: number;
  #rounds = 0;
  readonly #notches = new Map<Stage, number>();
  /** By item index: the days on which it was even at half the target. */
  readonly #evenDays = new Map<number, Set<number>>();

  constructor(
    readonly programme: Programme,
    readonly looksBack: boolean,
  ) {
    this.#stage = stageIndex(programme.reached);
  }

  /** The stage of its next round. */
  get next(): Stage {
    const isBack =
      this.looksBack && this.#stage > 0 && this.#rounds % LOOK_BACK_EVERY === LOOK_BACK_EVERY - 1;
    const turn = Math.floor(this.#rounds / LOOK_BACK_EVERY);
    return STAGES[isBack ? turn % this.#stage : this.#stage]!;
  }

  notch(stage: Stage): number {
    const below = STAGES.slice(0, stageIndex(stage)).flatMap((one) => this.#notches.get(one) ?? []);
    const half = notchOf(this.programme.stages[stage].target / 2);
    const first = below.length === 0 ? half : Math.max(0, Math.min(...below) - BEGIN_LOWER);
    return this.#notches.get(stage) ?? first;
  }

  noteEven({ index }: Item, day: number): void {
    const days = this.#evenDays.get(index) ?? new Set();
    this.#evenDays.set(index, days.add(day));
  }

  /** After a round: the metronome goes up, stays or goes down, and a stage may open. */
  move(items: readonly Item[], share: number): void {
    const stage = items[0]!.way as Stage;
    const highest = notchOf(ABOVE_TARGET * this.programme.stages[stage].target);
    const by = share === 1 ? 2 : share >= UP ? 1 : share < DOWN ? -1 : 0;
    this.#notches.set(stage, Math.min(highest, Math.max(0, this.notch(stage) + by)));
    this.#rounds += 1;
    if (this.#stage < topStage(this.programme) && this.#holds(items[0]!.note)) this.#stage += 1;
  }

  #holds(note: StartingNote): boolean {
    const days = ({ index }: Item): number => this.#evenDays.get(index)?.size ?? 0;
    const items = roundItems(note, STAGES[this.#stage]!);
    return items.filter((item) => days(item) >= DAYS_TO_HOLD).length >= MOST;
  }
}

/** The round of a stage, cut to the chords that fit into the seconds left; null if they are too few. */
function roundAt(note: StartingNote, place: Place, seconds: number): Task | null {
  const stage = place.next;
  const items = roundItems(note, stage);
  for (let size = items.length; size >= SHORTEST_ROUND; size--) {
    const task = costed(items.slice(0, size), NOTCHES[place.notch(stage)]!);
    if (task.seconds <= seconds) return task;
  }
  return null;
}

/** The place of the next note among the notes, for a count of the rounds before. */
type Turn = (rounds: number, morning: Morning) => number;

const byStaircase =
  (turn: Turn, looksBack: boolean): MakePlanner =>
  (_learner, _share, programme) => {
    const notes = notesOf(programme);
    const places = new Map(notes.map((note) => [note, new Place(programme, looksBack)]));
    let rounds = 0;
    let even = 0;
    return {
      *plan(morning) {
        let left = morning.seconds;
        for (;;) {
          const note = notes[turn(rounds, morning) % notes.length]!;
          const place = places.get(note)!;
          const task = roundAt(note, place, left);
          if (task === null) return;
          left -= task.seconds;
          rounds += 1;
          even = 0;
          yield { ...task, key: `${note}.${task.items[0]!.way}.${rounds}` };
          place.move(task.items, even / task.items.length);
        }
      },
      noteRun(item: Item, fluency: Fluency, { number, tempo }) {
        if (fluency < EVEN) return;
        even += 1;
        const { target } = programme.stages[item.way as Stage];
        if (tempo >= target / 2) places.get(item.note)!.noteEven(item, number);
      },
    };
  };

/** One note a day. */
export const noteADayByStaircase = byStaircase((_, { practised }) => practised, false);

/** One note a week, by the calendar, and every fifth round goes back. */
export const noteAWeekByStaircase = byStaircase((_, { number }) => Math.floor(number / 7), true);

/** The next note with each round, and every fifth round of a note goes back to a lower stage, in turn. */
export const nextNoteByStaircase = byStaircase((rounds) => rounds, true);
