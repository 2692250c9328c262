/**
 * Baselines without any model: each note has its place on the metronome and its stage, and both move by what was heard
 * in the round, as teachers do it (common practice, no source). The planner is asked again after each round.
 */
import { EVEN, type Fluency } from '../../../shared/log/events';
import type { Item, StartingNote, Way } from '../../../shared/music/deck';
import { roundItems, STAGES } from '../../../shared/music/deck';
import type { Tempo } from '../../../shared/music/tempo';
import {
  costed,
  type MakePlanner,
  type Morning,
  NOTES,
  SHORTEST_ROUND,
  type Task,
} from './planner';

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
/** Share of the round that came out even: from here up a notch, two when all of it; below it down a notch. Tuned. */
const UP = Number(process.env.UP ?? 0.7);
const DOWN = Number(process.env.DOWN ?? 0.4);
/** A stage opens when most chords were even at half the target on two days. */
const DAYS_TO_HOLD = Number(process.env.HOLD ?? 2);
const MOST = Number(process.env.MOST ?? 0.6);
/** Notches by which a note begins a stage below its place on the stage before. Tuned. */
const BEGIN_LOWER = Number(process.env.LOWER ?? 4);
const LOOK_BACK_EVERY = 5;

/** Where one note stands. */
interface Place {
  stage: number;
  rounds: number;
  /** By way: its notch. */
  readonly notches: Map<Way, number>;
  /** By item index: the days on which it was even at half the target. */
  readonly evenDays: Map<number, Set<number>>;
}

const notchOf = (tempo: Tempo): number =>
  NOTCHES.reduce((best, notch, i) => (notch <= tempo ? i : best), 0);

type Next = (place: number, morning: Morning) => StartingNote;

const byStaircase =
  (next: Next, looksBack: boolean): MakePlanner =>
  ({ traits }) => {
    const half = traits.target / 2;
    const highest = notchOf(ABOVE_TARGET * traits.target);
    const places = new Map<StartingNote, Place>(
      NOTES.map((note) => [
        note,
        {
          stage: traits.isHalfWay ? 2 : 0,
          rounds: 0,
          notches: new Map(),
          evenDays: new Map(),
        },
      ]),
    );
    let played = 0;
    let even = 0;
    let tempo = half;
    let rounds = 0;

    const wayOf = ({ stage, rounds: count }: Place): Way => {
      const isBack = looksBack && stage > 0 && count % LOOK_BACK_EVERY === LOOK_BACK_EVERY - 1;
      return STAGES[isBack ? Math.floor(count / LOOK_BACK_EVERY) % stage : stage]!;
    };
    const notchFor = ({ notches }: Place, way: Way): number => {
      const below = STAGES.slice(0, STAGES.indexOf(way as never)).flatMap(
        (one) => notches.get(one) ?? [],
      );
      const begin = below.length > 0 ? Math.min(...below) - BEGIN_LOWER : notchOf(half);
      return notches.get(way) ?? Math.max(0, begin);
    };
    const taskOf = (note: StartingNote, left: number): Task | null => {
      const place = places.get(note)!;
      const way = wayOf(place);
      const items = roundItems(note, way);
      tempo = NOTCHES[notchFor(place, way)]!;
      for (let size = items.length; size >= SHORTEST_ROUND; size--) {
        const task = costed(items.slice(0, size), tempo);
        if (task.seconds <= left) return task;
      }
      return null;
    };
    const isOpen = (place: Place, note: StartingNote): boolean => {
      const items = roundItems(note, STAGES[place.stage]!);
      const held = items.filter(
        ({ index }) => (place.evenDays.get(index)?.size ?? 0) >= DAYS_TO_HOLD,
      );
      return place.stage < 3 && held.length >= MOST * items.length;
    };
    /** After the round: the metronome goes up, stays or goes down, and a stage may open. */
    const move = (note: StartingNote, way: Way): void => {
      const place = places.get(note)!;
      const share = even / played;
      const by = share === 1 ? 2 : share >= UP ? 1 : share < DOWN ? -1 : 0;
      place.notches.set(way, Math.min(highest, Math.max(0, notchFor(place, way) + by)));
      place.rounds += 1;
      if (isOpen(place, note)) place.stage += 1;
    };

    return {
      *plan(morning) {
        let left = morning.seconds;
        for (;;) {
          const note = next(rounds, morning);
          const task = taskOf(note, left);
          if (task === null) return;
          rounds += 1;
          left -= task.seconds;
          played = even = 0;
          const { way } = task.items[0]!;
          yield { ...task, key: `${note}.${way}.${rounds}` };
          move(note, way);
        }
      },
      noteRun: (item: Item, fluency: Fluency, number) => {
        played += 1;
        if (fluency < EVEN) return;
        even += 1;
        if (tempo < half) return;
        const { evenDays } = places.get(item.note)!;
        const days = evenDays.get(item.index) ?? new Set();
        evenDays.set(item.index, days.add(number));
      },
    };
  };

/** One note a day. */
export const noteADayByStaircase = byStaircase(
  (_, { practised }) => NOTES[practised % NOTES.length]!,
  false,
);

/** One note a week, by the calendar, and every fifth round goes back. */
export const noteAWeekByStaircase = byStaircase(
  (_, { number }) => NOTES[Math.floor(number / 7) % NOTES.length]!,
  true,
);

/** The next note with each round, and every fifth round of a note goes back to a lower stage, in turn. */
export const nextNoteByStaircase = byStaircase((place) => NOTES[place % NOTES.length]!, true);
