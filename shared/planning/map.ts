/** The map: the arpeggios of some starting notes played in one way, with how ready each is. */
import type { Day } from '../log/events';
import { asksFor, type Programme, targetFor } from '../log/programme';
import {
  type Item,
  roundItems,
  type Stage,
  stageIndex,
  STAGES,
  type StartingNote,
  type Way,
  WAYS,
} from '../music/deck';
import { chanceEven } from '../learning/prediction';
import { isOnTheWay } from './candidates';
import type { Student } from './student';

export interface Cell {
  readonly item: Item;
  /** Whether the programme asks for its chord in this stage or a higher one. */
  readonly isOnTheWay: boolean;
  /** Of at least even at the target tempo, 0 to 1. */
  readonly chance: number;
  /** Whether the arpeggio has come up to this stage; off the path all are open. */
  readonly isOpen: boolean;
  /** An item that was never played has its chance from the others alone. */
  readonly isPlayed: boolean;
  readonly isAside: boolean;
}

/** The eleven cells of one starting note, in the order of a round, on a day if nothing is played until then. */
export function cellsOf(
  student: Student,
  programme: Programme,
  { note, way, day }: { readonly note: StartingNote; readonly way: Way; readonly day: Day },
): readonly Cell[] {
  return roundItems(note, way).map((item) => ({
    item,
    isOnTheWay: isOnTheWay(programme, item),
    chance: chanceEven(student.learner, item, targetFor(programme, item), day),
    isOpen: stageIndex(way) <= student.stages.open[item.arpeggioIndex]!,
    isPlayed: student.lastRuns.has(item.id),
    isAside: student.aside.has(item.id),
  }));
}

/** Whether an item counts in its way of playing: where the programme asks for nothing, what is on the way does. */
const isCounted = (programme: Programme, { item, isOnTheWay: isWorked }: Cell): boolean => {
  const stage = STAGES[stageIndex(item.way)];
  return stage !== undefined && programme.stages[stage].asked
    ? asksFor(programme, stage, item.chord)
    : isWorked;
};

/**
 * The mean of the chances over the starting notes of the programme and the chords that it asks for, for each way of
 * playing in which there is anything of it.
 */
export function sharesOf(
  student: Student,
  programme: Programme,
  day: Day,
): ReadonlyMap<Way, number> {
  return new Map(
    WAYS.flatMap((way): readonly [Way, number][] => {
      const cells = programme.notes
        .flatMap((note) => cellsOf(student, programme, { note, way, day }))
        .filter((cell) => isCounted(programme, cell));
      const sum = cells.reduce((total, { chance }) => total + chance, 0);
      return cells.length === 0 ? [] : [[way, sum / cells.length]];
    }),
  );
}

/** The highest stage of the programme in which something has been played, or else the one reached: where the work is. */
export function frontOf(student: Student, programme: Programme): Stage {
  const isPlayed = (stage: Stage): boolean =>
    programme.notes.some((note) =>
      roundItems(note, stage).some((item) => student.lastRuns.has(item.id)),
    );
  return STAGES.findLast(isPlayed) ?? programme.reached;
}
