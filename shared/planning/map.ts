/** The map: the arpeggios of some starting notes played in one way, with how ready each is. */
import type { Day } from '../log/events';
import type { Programme } from '../log/programme';
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
import type { Tempo } from '../music/tempo';
import { chanceEven } from '../learning/prediction';
import type { Student } from './student';

export interface Cell {
  readonly item: Item;
  /** Of at least even at the target tempo, 0 to 1. */
  readonly chance: number;
  /** Whether the arpeggio has come up to this stage; off the path all are open. */
  readonly isOpen: boolean;
  /** An item that was never played has its chance from the others alone. */
  readonly isPlayed: boolean;
  readonly isAside: boolean;
}

/** Target tempo of a way of playing; single hands over four octaves serve four octaves together. */
export const targetOf = (programme: Programme, way: Way): Tempo =>
  programme.stages[STAGES[stageIndex(way)] ?? 'together.4'].target;

/** The eleven cells of one starting note, in the order of a round, on a day if nothing is played until then. */
export function cellsOf(
  student: Student,
  programme: Programme,
  { note, way, day }: { readonly note: StartingNote; readonly way: Way; readonly day: Day },
): readonly Cell[] {
  const target = targetOf(programme, way);
  return roundItems(note, way).map((item) => ({
    item,
    chance: chanceEven(student.learner, item, target, day),
    isOpen: stageIndex(way) <= student.stages.open[item.arpeggioIndex]!,
    isPlayed: student.lastRuns.has(item.id),
    isAside: student.aside.has(item.id),
  }));
}

/** The mean of the chances over the starting notes of the programme, for each way of playing. */
export function sharesOf(
  student: Student,
  programme: Programme,
  day: Day,
): ReadonlyMap<Way, number> {
  return new Map(
    WAYS.map((way) => {
      const chances = programme.notes.flatMap((note) =>
        cellsOf(student, programme, { note, way, day }).map((cell) => cell.chance),
      );
      return [way, chances.reduce((sum, chance) => sum + chance, 0) / chances.length];
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
