/**
 * Cuts the recording of a whole practice into runs, and finds for each the item that it is: first the rests, then for
 * what lies between them the starting note and way whose round explains it best, then the arpeggios in it.
 */
import { type Item, roundItems, STARTING_NOTES, WAYS } from '../music/deck';
import type { Score } from '../music/score';
import { type ContraryForm, sequenceOf } from '../music/sequence';
import { align, type Alignment, type Pass } from './align';
import { type Expected, expectedOf } from './expected';
import { median } from './statistics';
import { type HeardNote, sliceOf, type Take } from './take';

export interface CutRun {
  readonly item: Item;
  /** Seconds from the beginning of the recording. */
  readonly from: number;
  readonly to: number;
  /** What was heard in that time. */
  readonly take: Take;
}

export interface CutOptions {
  readonly contraryForm: ContraryForm;
  /** The notes of a round; fingers do not matter here. */
  readonly scoreOf: (items: readonly Item[]) => Score;
}

/** Seconds, and times from note to note, that are a rest between two runs. */
const REST = 1.2;
const REST_INTERVALS = 3;
/** Fewer notes are no whole item: a beginning, an end, a try. They belong to a neighbour that is not far off, in s. */
const WHOLE_NOTES = 13;
const NEAR = 6;
/** Notes by which candidates are chosen, and how many are looked at closely. */
const FIRST_NOTES = 48;
const CANDIDATES = 6;
/** A cost below which the first candidate is the one: a slip or two, or a restart. */
const CLEAR = 3;
/** Share of the notes that a round must explain, and of an arpeggio that a run must have. */
const EXPLAINED = 0.6;
const WHOLE_ENOUGH = 0.6;
/** More notes than the longest round has are cut where the rest is longest. */
const MOST_NOTES = 1500;

interface Group {
  readonly items: readonly Item[];
  /** The keys of each of its arpeggios. */
  readonly keys: readonly ReadonlySet<number>[];
}

interface Stretch {
  readonly notes: readonly HeardNote[];
  readonly group: Group;
}

/** The runs of a recording, in their order. What fits nothing is left out. */
export function cutRuns(take: Take, options: CutOptions): readonly CutRun[] {
  const groups = groupsOf(options);
  const rounds = new Map<Group, Expected>();
  const roundOf = (group: Group): Expected => {
    const expected = rounds.get(group) ?? expectedOf(options.scoreOf(group.items));
    rounds.set(group, expected);
    return expected;
  };
  const stretches = stretchesOf(take.notes).flatMap((notes): readonly Stretch[] => {
    const group = bestGroup(notes, groups, roundOf);
    return group === null ? [] : [{ notes, group }];
  });
  return joined(stretches).flatMap(({ notes, group }) => {
    const expected = roundOf(group);
    return runsIn(expected, align(expected, notes, 'any order')).map(
      ({ part, from, to }): CutRun => {
        // A little beyond both ends, as hands may lie apart.
        const slice = sliceOf(take, from - 0.001, to + 0.001);
        return { item: group.items[part]!, from, to, take: slice };
      },
    );
  });
}

const groupsOf = ({ contraryForm }: CutOptions): readonly Group[] =>
  STARTING_NOTES.flatMap((note) =>
    WAYS.map((way): Group => {
      const items = roundItems(note, way);
      const keys = items.map((item) => {
        const steps = sequenceOf(item, { contraryForm });
        const midis = steps.flatMap(({ right, left }) => [right?.midi, left?.midi]);
        return new Set(midis.filter((midi) => midi !== undefined));
      });
      return { items, keys };
    }),
  );

/** Notes between rests; too few of them are joined to what comes before or after, whichever is nearer. */
function stretchesOf(notes: readonly HeardNote[]): readonly (readonly HeardNote[])[] {
  const usual = median(notes.slice(2).map(({ on }, i) => on - notes[i]!.on)) ?? 0;
  const rest = Math.max(REST, REST_INTERVALS * usual);
  const stretches: HeardNote[][] = [];
  for (const [i, note] of notes.entries()) {
    const isNew =
      i === 0 || note.on - notes[i - 1]!.on > rest || stretches.at(-1)!.length === MOST_NOTES;
    if (isNew) stretches.push([note]);
    else stretches.at(-1)!.push(note);
  }
  for (let i = shortest(stretches); i !== null; i = shortest(stretches)) {
    const [after, before] = [restBefore(stretches, i + 1), restBefore(stretches, i)];
    if (Math.min(after, before) > NEAR) stretches.splice(i, 1);
    else
      stretches.splice(
        after < before ? i : i - 1,
        2,
        joinedAt(stretches, after < before ? i : i - 1),
      );
  }
  return stretches;
}

function shortest(stretches: readonly (readonly HeardNote[])[]): number | null {
  const lengths = stretches.map(({ length }) => length);
  const least = Math.min(...lengths);
  return least < WHOLE_NOTES ? lengths.indexOf(least) : null;
}

const restBefore = (stretches: readonly (readonly HeardNote[])[], i: number): number =>
  i < 1 || i >= stretches.length ? Infinity : stretches[i]![0]!.on - stretches[i - 1]!.at(-1)!.on;

const joinedAt = (stretches: readonly HeardNote[][], i: number): HeardNote[] =>
  stretches.slice(i, i + 2).flat();

/** How well a set of keys agrees with an arpeggio: what they share of what either has (Jaccard 1901). */
function agreement(heard: ReadonlySet<number>, keys: ReadonlySet<number>): number {
  const shared = [...heard].filter((midi) => keys.has(midi)).length;
  return shared / (heard.size + keys.size - shared);
}

function bestGroup(
  notes: readonly HeardNote[],
  groups: readonly Group[],
  roundOf: (group: Group) => Expected,
): Group | null {
  const heard = new Set(notes.slice(0, FIRST_NOTES).map(({ midi }) => midi));
  const likely = groups
    .map((group) => ({ group, fit: Math.max(...group.keys.map((keys) => agreement(heard, keys))) }))
    .toSorted((a, b) => b.fit - a.fit)
    .slice(0, CANDIDATES);
  let [best, least]: [Group | null, number] = [null, Infinity];
  for (const { group } of likely) {
    const alignment = align(roundOf(group), notes, 'any order');
    if (rightIn(alignment) < EXPLAINED * notes.length || alignment.cost >= least) continue;
    [best, least] = [group, alignment.cost];
    if (least < CLEAR) break;
  }
  return best;
}

const rightIn = ({ passes }: Alignment): number =>
  passes.reduce((sum, { played }) => sum + played.filter(({ isRight }) => isRight).length, 0);

/** Neighbours of one group become one: a run may have a rest in it. */
function joined(stretches: readonly Stretch[]): readonly Stretch[] {
  const all: Stretch[] = [];
  for (const stretch of stretches) {
    const before = all.at(-1);
    const isSame = before?.group === stretch.group;
    if (isSame && before.notes.length + stretch.notes.length <= MOST_NOTES) {
      all[all.length - 1] = { ...before, notes: [...before.notes, ...stretch.notes] };
    } else all.push(stretch);
  }
  return all;
}

interface Attempt {
  readonly part: number;
  readonly from: number;
  readonly to: number;
  /** Steps of the part that were reached. */
  readonly steps: number;
  readonly isOver: boolean;
}

/** The attempts at arpeggios; one that was broken off and begun again at once is one. */
function runsIn(expected: Expected, { passes }: Alignment): readonly Attempt[] {
  const attempts: Attempt[] = [];
  for (const attempt of passes.flatMap((pass) => attemptsIn(expected, pass))) {
    const before = attempts.at(-1);
    if (before && before.part === attempt.part && !before.isOver) {
      const steps = Math.max(before.steps, attempt.steps);
      attempts[attempts.length - 1] = { ...attempt, from: before.from, steps };
    } else attempts.push(attempt);
  }
  return attempts.filter(({ part, steps }) => {
    const { from, to } = expected.parts[part]!;
    return steps >= WHOLE_ENOUGH * (to - from + 1);
  });
}

function attemptsIn(expected: Expected, pass: Pass): readonly Attempt[] {
  return expected.parts.flatMap((part, index): readonly Attempt[] => {
    const inside = pass.played.filter(({ step }) => step >= part.from && step <= part.to);
    // The note that it shares with a neighbour is not yet a playing of it.
    if (pass.from >= part.to || pass.to <= part.from || inside.length === 0) return [];
    const times = inside.map(({ heard }) => heard.on);
    const steps = new Set(inside.map(({ step }) => step)).size;
    const [from, to] = [Math.min(...times), Math.max(...times)];
    return [{ part: index, from, to, steps, isOver: pass.to >= part.to }];
  });
}
