/**
 * Which heard note is which expected one. Dynamic programming over the exact pitches: every heard note is taken for an
 * expected one, for a wrong one in its place, or for an extra one; expected notes may be missing; and at a price the
 * player may go on from any other place, so that restarts, repeats and left out bars are found as such.
 */
import type { Expected, ExpectedNote } from './expected';
import { bestFit, costOfFit, EXTRA, MISSED } from './fit';
import { median } from './statistics';
import type { HeardNote } from './take';

/** One expected note and what was heard for it. */
export interface Played {
  readonly step: number;
  readonly note: ExpectedNote;
  readonly heard: HeardNote;
  readonly isRight: boolean;
}

export interface Extra {
  /** The step that comes next. */
  readonly step: number;
  readonly heard: HeardNote;
}

/** Playing on and on without going to another place: what came of the steps `from` to `to`, both included. */
export interface Pass {
  readonly from: number;
  readonly to: number;
  readonly played: readonly Played[];
  readonly missed: readonly { readonly step: number; readonly note: ExpectedNote }[];
  readonly extra: readonly Extra[];
}

export interface Alignment {
  /** In the order of playing. */
  readonly passes: readonly Pass[];
  /** How badly it fits: about one for each fault, 0 for a perfect take. */
  readonly cost: number;
}

/** Costs in faults (P): to go elsewhere must explain more than two of them. */
const JUMP_TO_START = 2.5;
const JUMP_ELSEWHERE = 3;
/** Less after a rest: who breaks off needs one. In times from note to note. */
const AFTER_REST = 1.1;
const REST = 1.6;
/** Prefers the heard note that came in time where two would fit. */
const UNTIMELY = 0.15;
const MOST_UNTIMELY = 0.3;
const APART = 0.2;

/** Seconds within which notes are one moment, at least and as a share of the time from note to note. */
const TOGETHER = 0.08;
const TOGETHER_SHARE = 0.65;

/** Median time in seconds from moment to moment, where each has the notes of so many hands. */
export function usualInterval(notes: readonly HeardNote[], hands: number): number {
  return median(notes.slice(hands).map(({ on }, i) => on - notes[i]!.on)) ?? 1;
}

/** How many notes most moments have. */
export const handsIn = ({ steps }: Expected): number => steps[0]?.length ?? 1;

/** How a cell was reached: by so many heard notes for one step, by an extra note, or from another place. */
const BY_EXTRA = 10;
const BY_JUMP = 11;

/**
 * Whether the parts are known to be played in order from the first to the last; or in any order, as in a recording of
 * which nothing is known.
 */
export type Order = 'in order' | 'any order';

/** Aligns heard notes, in the order in which they began. No notes give no passes. */
export function align(
  expected: Expected,
  heard: readonly HeardNote[],
  order: Order = 'in order',
): Alignment {
  if (heard.length === 0) return { passes: [], cost: 0 };
  return new Table(expected, heard, order).alignment();
}

class Table {
  private readonly width: number;
  private readonly interval: number;
  private readonly costs: Float32Array;
  private readonly ways: Uint8Array;
  private readonly origins: Int16Array;
  /** When and at which step a note was last taken, to know whether the next is in time. */
  private readonly times: Float32Array;
  private readonly places: Int16Array;
  private readonly starts: ReadonlySet<number>;

  constructor(
    private readonly expected: Expected,
    private readonly heard: readonly HeardNote[],
    private readonly order: Order,
  ) {
    this.width = expected.steps.length + 1;
    const size = (heard.length + 1) * this.width;
    this.interval = usualInterval(heard, handsIn(expected));
    this.costs = new Float32Array(size).fill(Infinity);
    this.ways = new Uint8Array(size);
    this.origins = new Int16Array(size);
    this.times = new Float32Array(size).fill(NaN);
    this.places = new Int16Array(size);
    this.starts = new Set(expected.parts.map(({ from }) => from));
  }

  alignment(): Alignment {
    this.costs[0] = 0;
    for (let j = 0; j <= this.heard.length; j++) {
      this.miss(j);
      this.jump(j);
      if (j < this.heard.length) this.takeNotes(j);
    }
    const last = this.heard.length * this.width;
    // Not to play to the end costs as much as to go elsewhere.
    const ends = new Set(
      this.order === 'in order' ? [] : this.expected.parts.map(({ to }) => to + 1),
    );
    let [end, cost] = [this.width - 1, this.costs[last + this.width - 1]!];
    for (let k = 0; k < this.width; k++) {
      const stopped = this.costs[last + k]! + (ends.has(k) ? 0 : JUMP_ELSEWHERE);
      if (stopped < cost) [end, cost] = [k, stopped];
    }
    return { passes: this.passesTo(end), cost };
  }

  private reach(cell: number, cost: number, way: number): boolean {
    if (!(cost < this.costs[cell]!)) return false;
    this.costs[cell] = cost;
    this.ways[cell] = way;
    return true;
  }

  private keepTime(cell: number, from: number): void {
    this.times[cell] = this.times[from]!;
    this.places[cell] = this.places[from]!;
  }

  private miss(j: number): void {
    for (let k = 0; k + 1 < this.width; k++) {
      const from = j * this.width + k;
      const cost = this.costs[from]! + MISSED * this.expected.steps[k]!.length;
      if (this.reach(from + 1, cost, 0)) this.keepTime(from + 1, from);
    }
  }

  private jump(j: number): void {
    const row = j * this.width;
    let best = 0;
    for (let k = 1; k < this.width; k++)
      if (this.costs[row + k]! < this.costs[row + best]!) best = k;
    const rest = j === 0 ? 0 : (this.heard[j]?.on ?? Infinity) - this.heard[j - 1]!.on;
    const cost = this.costs[row + best]! - (rest > REST * this.interval ? AFTER_REST : 0);
    for (let k = 0; k + 1 < this.width; k++) {
      const isFree = j === 0 && this.order === 'any order';
      const price = !this.starts.has(k) ? JUMP_ELSEWHERE : isFree ? 0 : JUMP_TO_START;
      // Of places that fit alike, the nearest.
      const far = Math.abs(k - best) / (10 * this.width);
      if (k === best || !this.reach(row + k, cost + price + far, BY_JUMP)) continue;
      this.origins[row + k] = best;
      this.times[row + k] = NaN;
    }
  }

  private takeNotes(j: number): void {
    const row = j * this.width;
    const { steps } = this.expected;
    for (let k = 0; k < this.width; k++) {
      const from = row + k;
      if (this.costs[from] === Infinity) continue;
      // Nobody goes elsewhere to play a wrong note there.
      if (this.ways[from] === BY_JUMP && !this.isRight(j, k)) continue;
      const extra = from + this.width;
      if (this.reach(extra, this.costs[from]! + EXTRA, BY_EXTRA)) this.keepTime(extra, from);
      const most = steps[k] === undefined ? 0 : steps[k]!.length === 1 ? 1 : 3;
      for (let count = 1; count <= most; count++) this.takeForStep(j, k, count);
    }
  }

  private isRight(j: number, k: number): boolean {
    return this.expected.steps[k]!.some(({ key }) => key.midi === this.heard[j]!.midi);
  }

  private takeForStep(j: number, k: number, count: number): void {
    const first = this.heard[j]!;
    const last = this.heard[j + count - 1];
    if (last === undefined) return;
    const apart = last.on - first.on;
    if (apart > Math.max(TOGETHER, TOGETHER_SHARE * this.interval)) return;
    const from = j * this.width + k;
    const cost = costOfFit(this.expected.steps[k]!, this.heard, j, count);
    const to = (j + count) * this.width + k + 1;
    const untimely = this.untimely(from, k, first.on);
    const total = this.costs[from]! + cost + untimely + (APART * apart) / this.interval;
    if (!this.reach(to, total, count)) return;
    this.times[to] = first.on;
    this.places[to] = k;
  }

  private untimely(from: number, k: number, on: number): number {
    const since = on - this.times[from]!;
    if (Number.isNaN(since)) return 0;
    const due = (k - this.places[from]!) * this.interval;
    return Math.min(MOST_UNTIMELY, UNTIMELY * Math.abs(Math.log(Math.max(since, 0.001) / due)));
  }

  private passesTo(end: number): readonly Pass[] {
    const passes: Pass[] = [];
    let pass = newPass(end);
    let [j, k] = [this.heard.length, end];
    while (j > 0 || k > 0) {
      const way = this.ways[j * this.width + k]!;
      if (way === BY_JUMP) {
        passes.unshift({ ...pass, from: k });
        k = this.origins[j * this.width + k]!;
        pass = newPass(k);
      } else if (way === BY_EXTRA) {
        j -= 1;
        pass.extra.unshift({ step: k, heard: this.heard[j]! });
      } else {
        j -= way;
        k -= 1;
        this.addStep(pass, j, k, way);
      }
    }
    passes.unshift({ ...pass, from: 0 });
    return passes.filter(({ played }) => played.length > 0);
  }

  private addStep(pass: OpenPass, j: number, k: number, count: number): void {
    const step = this.expected.steps[k]!;
    const heard = this.heard.slice(j, j + count);
    const { assignment } = bestFit(step, heard);
    step.forEach((note, i) => {
      const one = heard[assignment[i]!];
      if (one === undefined) pass.missed.unshift({ step: k, note });
      else {
        pass.played.unshift({ step: k, note, heard: one, isRight: one.midi === note.key.midi });
      }
    });
    const extra = heard.filter((_, i) => !assignment.includes(i));
    pass.extra.unshift(...extra.map((one) => ({ step: k, heard: one })));
  }
}

type OpenPass = { readonly [K in 'played' | 'missed' | 'extra']: Pass[K][number][] } & {
  readonly to: number;
};

const newPass = (next: number): OpenPass => ({ to: next - 1, played: [], missed: [], extra: [] });
