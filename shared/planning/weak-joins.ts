/** The joins to work on: those that were heard to wait, and else the hardest of items that did not come out even. */
import { type Day, EVEN, type Fluency, type RunEvent } from '../log/events';
import type { Item } from '../music/deck';
import { weakestJoins } from './heard-joins';
import { type Join, joinsOf } from './joins';
import type { LastRun, Student } from './student';

export interface WeakJoin {
  readonly item: Item;
  readonly join: Join;
  readonly evidence:
    | {
        readonly kind: 'heard';
        /** Milliseconds on average. */
        readonly wait: number;
        readonly takes: number;
        /** Of the last of them. */
        readonly day: Day;
      }
    | { readonly kind: 'rated'; readonly fluency: Fluency; readonly day: Day };
}

interface RatedItem {
  readonly item: Item;
  readonly chance: number;
  readonly last: LastRun;
}

const MOST = 4;

/** By ratings alone: where the weakest items that were last less than even go wrong, each arpeggio once. */
export function ratedJoins(student: Student, weakest: readonly RatedItem[]): readonly WeakJoin[] {
  const seen = new Set<string>();
  return weakest
    .filter(({ last }) => last.fluency < EVEN)
    .toSorted(
      (a, b) =>
        a.last.fluency - b.last.fluency || a.chance - b.chance || a.item.index - b.item.index,
    )
    .flatMap(({ item, last }): readonly WeakJoin[] => {
      if (seen.has(item.arpeggio)) return [];
      seen.add(item.arpeggio);
      const joins = joinsOf(student, item);
      const [join] = joins.toSorted((a, b) => b.change.difficulty - a.change.difficulty);
      const { fluency, day } = last;
      return join === undefined ? [] : [{ item, join, evidence: { kind: 'rated', fluency, day } }];
    })
    .slice(0, MOST);
}

/** Those that were heard to wait in some runs, before those that only ratings speak of. */
export function withHeard(
  rated: readonly WeakJoin[],
  student: Student,
  { runs, today }: { readonly runs: readonly RunEvent[]; readonly today: Day },
): readonly WeakJoin[] {
  const heard = weakestJoins(student, runs, today).map(
    ({ item, id, hand, change, wait, takes, last }): WeakJoin => ({
      item,
      join: { id, hand, change },
      evidence: { kind: 'heard', wait, takes, day: last },
    }),
  );
  const known = new Set(heard.map(({ join }) => join.id));
  return [...heard, ...rated.filter(({ join }) => !known.has(join.id))].slice(0, MOST);
}
