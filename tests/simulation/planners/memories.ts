/** Baselines that plan by memory: when something is due, and not what lacks tempo. */
import { EVEN, type Fluency } from '../../../shared/log/events';
import {
  DECK,
  type Item,
  itemAt,
  roundItems,
  STAGES,
  type StartingNote,
} from '../../../shared/music/deck';
import type { Student } from '../../../shared/planning/student';
import {
  costed,
  type MakePlanner,
  type Morning,
  NOTES,
  type Planner,
  roundTempo,
  SHORTEST_ROUND,
  stageOf,
  type Task,
  taskOf,
  tempoOf,
} from './planner';

const ARPEGGIOS = NOTES.flatMap((note) => roundItems(note, 'right.2')).map(
  ({ arpeggioIndex }) => arpeggioIndex,
);

const openItem = (student: Student, arpeggio: number): Item =>
  itemAt(arpeggio, STAGES[student.stages.open[arpeggio]!]!);

/** Doubling intervals: an item is due after 1, 2, 4 … days while it comes out even, and starts again when not. */
export const doublingIntervals: MakePlanner = (): Planner => {
  const interval = new Float64Array(DECK.length);
  const due = new Float64Array(DECK.length);
  return {
    plan: (morning) => {
      const tasks: Task[] = [];
      let left = morning.seconds;
      const byDue = ARPEGGIOS.map((arpeggio) => openItem(morning.student, arpeggio)).toSorted(
        (a, b) => due[a.index]! - due[b.index]! || a.index - b.index,
      );
      for (const item of byDue) {
        const task = taskOf(morning, [item]);
        if (task.seconds > left) break;
        left -= task.seconds;
        tasks.push(task);
      }
      return tasks;
    },
    noteRun: ({ index }, fluency: Fluency, { number }) => {
      interval[index] = fluency >= EVEN ? Math.max(1, 2 * interval[index]!) : 1;
      due[index] = number + interval[index]!;
    },
  };
};

/** Share of an item that is remembered after a pause of one stability (assumed), and how stability grows. */
const KEPT = 0.9;
const GROWTH = 1.5;

/** A round with the lack of memory that it meets a second. */
interface Offer {
  readonly task: Task;
  readonly rate: number;
}

/**
 * Two-component memory in rounds: each item has a strength that fades and a stability in days, which grows by success
 * and by more the more had faded. Each round holds the items of a note that have faded most for their time. Own formula.
 */
export const twoComponentMemory: MakePlanner = (): Planner => {
  const stability = new Float64Array(DECK.length).fill(1);
  const last = new Float64Array(DECK.length);
  const today = new Float64Array(DECK.length);
  const faded = ({ index }: Item, number: number): number =>
    last[index] === 0 ? 1 : 1 - KEPT ** ((number - last[index]!) / stability[index]!);

  /** Every prefix of at least four items of a note, those that lack most first. */
  const offersOf = (morning: Morning, note: StartingNote): readonly Offer[] => {
    const lacks = roundItems(note, stageOf(morning.student, note))
      .map((item) => ({
        item,
        tempo: tempoOf(morning, item),
        // What has not faded at all is still worth a little, so that no time is left unused.
        lack: 0.01 + faded(item, morning.number) / (1 + 3 * today[item.index]!),
      }))
      .toSorted((a, b) => b.lack - a.lack || a.item.index - b.item.index);
    return lacks.slice(SHORTEST_ROUND - 1).map((_, extra) => {
      const chosen = lacks.slice(0, SHORTEST_ROUND + extra);
      const items = chosen.map(({ item }) => item).toSorted((a, b) => a.index - b.index);
      const tempo = roundTempo(chosen.map((one) => one.tempo));
      const task = costed(items, tempo);
      return { task, rate: chosen.reduce((sum, one) => sum + one.lack, 0) / task.seconds };
    });
  };

  return {
    plan: (morning) => {
      today.fill(0);
      const offers = new Map<StartingNote, readonly Offer[]>(
        NOTES.map((note) => [note, offersOf(morning, note)]),
      );
      const tasks: Task[] = [];
      let left = morning.seconds;
      for (;;) {
        const lastNote = tasks.at(-1)?.items[0]!.note;
        let leader: Offer | null = null;
        for (const [note, ofNote] of offers) {
          if (note === lastNote) continue;
          for (const offer of ofNote) {
            const isBetter = leader === null || offer.rate > leader.rate;
            if (isBetter && offer.task.seconds <= left) leader = offer;
          }
        }
        if (leader === null) return tasks;
        for (const { index } of leader.task.items) today[index]! += 1;
        const { note } = leader.task.items[0]!;
        offers.set(note, offersOf(morning, note));
        left -= leader.task.seconds;
        tasks.push(leader.task);
      }
    },
    noteRun: (item, fluency, { number }) => {
      if (fluency >= EVEN) stability[item.index]! *= 1 + GROWTH * faded(item, number);
      else stability[item.index] = Math.max(1, stability[item.index]! / 2);
      last[item.index] = number;
    },
  };
};
