/** The search of follower.ts, for a player who sits in one place. */
import type { Hand } from '../music/fingering/types';
import type { Expected, ExpectedPart } from './expected';
import { EXTRA, MISSED, pairCost } from './fit';

/** Costs in faults (P), as in align.ts. What follows is not known yet, so going on is believed longer than there. */
const RESTART = 2.3;
const RESTART_EARLIER = 2.4;
const JUMP = 3;
/** Less after a rest: who breaks off needs one. In times from note to note. */
const AFTER_REST = 1.1;
const REST = 1.6;
/** A wrong note that comes in time stands for the expected one; one that comes early is rather an extra one. */
const EARLY = 0.5;
const LATE = 0.1;
/** After a rest it is not likely that notes were left out. */
const LATE_AND_SKIPPED = 0.3;
const MOST_UNTIMELY = 0.5;
const NO_PLACE = 0.3;
/** Both hands of a step: seconds at least, and share of the time from note to note. */
const TOGETHER = 0.08;
const TOGETHER_SHARE = 0.65;
const APART = 0.2;
/** After so many wrong notes in a row nobody can say any more that the player goes on. */
const MOST_WRONG = 2;
const MOST_SKIPPED = 3;
/** Ways that are so many faults less likely than the likeliest are given up. */
const BEAM = 5;
/** Steps after which nobody turns the page to what is being played. */
const JUST_BEGUN = 4;
/** How fast the time from note to note is learnt. */
const LEARNING = 0.25;

/** Steps of each hand that were played right and have not been begun again since. */
export type Lit = Readonly<Record<Hand, ReadonlySet<number>>>;

/** What was played right, last first; a `mark` without a hand says that the player began again there. */
interface Trail {
  readonly step: number;
  readonly hand: Hand | null;
  readonly before: Trail | null;
}

/** One way to understand what was played. */
interface Path {
  readonly cost: number;
  readonly step: number;
  /** Which notes of the step have been played, as bits. */
  readonly heard: number;
  /** When the step began. */
  readonly on: number;
  /** Wrong steps in a row. */
  readonly wrong: number;
  readonly trail: Trail | null;
}

const ALL = 3;

export class Line {
  private paths: readonly Path[] = [
    { cost: 0, step: -1, heard: ALL, on: NaN, wrong: 0, trail: null },
  ];
  private last = NaN;

  constructor(
    private readonly expected: Expected,
    private interval: number,
  ) {}

  cost(): number {
    return this.paths[0]!.cost;
  }

  step(): number {
    return this.paths[0]!.step;
  }

  lit(): Lit {
    const lit = { right: new Set<number>(), left: new Set<number>() };
    let limit = Infinity;
    for (let one = this.paths[0]!.trail; one !== null; one = one.before) {
      if (one.hand === null) limit = Math.min(limit, one.step);
      else if (one.step < limit) lit[one.hand].add(one.step);
    }
    return lit;
  }

  turnTo(start: number): void {
    const [best] = this.paths;
    // Who turns the page after the first note has begun already.
    if (best!.step >= start && best!.step < start + JUST_BEGUN) return;
    const trail = { step: start, hand: null, before: best!.trail };
    this.paths = [{ ...best!, step: start - 1, heard: ALL, on: NaN, wrong: 0, trail }];
  }

  add(midi: number, on: number): void {
    const [best] = this.paths;
    const ways = new Map<number, Path>();
    const keep = (path: Path) => {
      const place = path.step * 4 + path.heard;
      if (path.cost < (ways.get(place)?.cost ?? Infinity)) ways.set(place, path);
    };
    for (const path of this.paths) {
      // Who strikes the same key again is still there.
      const isAgain = this.expected.steps[path.step]?.some(({ key }) => key.midi === midi);
      keep({ ...path, cost: path.cost + EXTRA + (isAgain ? 0 : NO_PLACE) });
      this.takeInStep(path, midi, on, keep);
      for (let skipped = 0; skipped <= MOST_SKIPPED; skipped++) {
        this.takeNext(path, skipped, { midi, on }, keep);
      }
    }
    this.jump(best!, midi, on, keep);
    const inOrder = [...ways.values()].toSorted((a, b) => a.cost - b.cost || b.step - a.step);
    this.paths = inOrder.filter(({ cost }) => cost <= inOrder[0]!.cost + BEAM);
    this.learn(best!);
    this.last = on;
  }

  /** The other hand's note of a step that has begun. */
  private takeInStep(path: Path, midi: number, on: number, keep: (path: Path) => void): void {
    const apart = on - path.on;
    if (!(apart <= Math.max(TOGETHER, TOGETHER_SHARE * this.interval))) return;
    this.expected.steps[path.step]!.forEach((note, i) => {
      if ((path.heard & (1 << i)) !== 0) return;
      const isRight = note.key.midi === midi;
      keep({
        ...path,
        cost: path.cost + pairCost(note, { midi }) + (APART * apart) / this.interval,
        heard: path.heard | (1 << i),
        wrong: isRight ? 0 : path.wrong,
        trail: isRight ? { step: path.step, hand: note.hand, before: path.trail } : path.trail,
      });
    });
  }

  /** The first note of a later step; what lies between was left out. */
  private takeNext(
    path: Path,
    skipped: number,
    { midi, on }: { readonly midi: number; readonly on: number },
    keep: (path: Path) => void,
  ): void {
    const step = path.step + 1 + skipped;
    const share = (on - path.on) / ((1 + skipped) * this.interval);
    const untimely = untimelyBy(share, skipped === 0 ? LATE : LATE_AND_SKIPPED);
    const cost = path.cost + MISSED * this.left(path, step) + untimely;
    this.expected.steps[step]?.forEach((note, i) => {
      const isRight = note.key.midi === midi;
      if (!isRight && (path.wrong >= MOST_WRONG || skipped > 0)) return;
      keep({
        cost: cost + pairCost(note, { midi }),
        step,
        heard: 1 << i,
        on,
        wrong: isRight ? 0 : path.wrong + 1,
        trail: isRight ? { step, hand: note.hand, before: path.trail } : path.trail,
      });
    });
  }

  /** Notes that were left out on the way to a step. */
  private left({ step, heard }: Path, next: number): number {
    const { steps } = this.expected;
    const here = (steps[step] ?? []).filter((_, i) => (heard & (1 << i)) === 0).length;
    return steps.slice(step + 1, next).reduce((sum, notes) => sum + notes.length, here);
  }

  /** Nobody goes elsewhere to play a wrong note there. */
  private jump(best: Path, midi: number, on: number, keep: (path: Path) => void): void {
    const { steps, parts } = this.expected;
    const rest = on - this.last > REST * this.interval ? AFTER_REST : 0;
    const here = this.partOf(best.step);
    const [from, to] = [parts[Math.max(0, here - 1)]!.from, parts[here]!.to];
    const ahead = parts[here + 1];
    const starts = new Map(parts.slice(0, here + 2).map((part) => [part.from, part]));
    const places = [...range(from, to), ...(ahead ? [ahead.from] : []), 0];
    for (const step of places) {
      const price = this.priceOf(step, starts.get(step), parts[here]!);
      steps[step]!.forEach((note, i) => {
        if (note.key.midi !== midi) return;
        const mark = { step, hand: null, before: best.trail };
        const trail = { step, hand: note.hand, before: mark };
        keep({ cost: best.cost + price - rest, step, heard: 1 << i, on, wrong: 0, trail });
      });
    }
  }

  private priceOf(step: number, begun: ExpectedPart | undefined, here: ExpectedPart): number {
    if (begun === undefined || step > here.from) return JUMP;
    return step === here.from ? RESTART : RESTART_EARLIER;
  }

  /** Index of the part that a step belongs to; a shared one belongs to the one that it begins. */
  private partOf(step: number): number {
    return Math.max(
      0,
      this.expected.parts.findLastIndex(({ from }) => from <= step),
    );
  }

  private learn(before: Path): void {
    const [best] = this.paths;
    if (best!.step !== before.step + 1 || Number.isNaN(before.on)) return;
    const took = Math.min(best!.on - before.on, 2 * this.interval);
    this.interval += LEARNING * (took - this.interval);
  }
}

/** What a step costs that came after `share` of the time that was due. */
function untimelyBy(share: number, late: number): number {
  if (Number.isNaN(share)) return 0;
  const off = Math.log(Math.max(share, 0.01));
  return Math.min(MOST_UNTIMELY, off < 0 ? -EARLY * off : late * off);
}

const range = (from: number, to: number): readonly number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i);
