/** Where things lie in the picture of a take. Pure arithmetic, in pixels. */
import type { RunTake } from '../../../shared/log/run-take';
import { leastHeard } from '../../../shared/log/take-limits';
import type { ScoreNote } from '../../../shared/music/score';

const HEIGHT = 132;
const TOP = 26;
const BOTTOM = 34;
/** Milliseconds that the picture shows at least and at most; longer bars are cut. */
const LEAST = 50;
const MOST = 200;

export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  /** Where a note lies that comes when it is due. */
  readonly zero: number;
  /** Width of a bar. */
  readonly bar: number;
  readonly x: (step: number) => number;
  /** Pixels of so many milliseconds. */
  readonly tall: (ms: number) => number;
  readonly most: number;
}

/** Milliseconds of the highest bar of both hands, which share a scale. */
export function highestOf({ hands }: RunTake): number {
  const waits = [hands.right, hands.left].flatMap((hand) => hand?.waits ?? []);
  const sizes = waits.map((wait) => Math.abs(wait ?? 0));
  return Math.min(MOST, Math.max(LEAST, ...sizes));
}

export function layoutOf(width: number, notes: number, most: number): Layout {
  const [left, right] = [0, width];
  const each = (right - left) / notes;
  const half = (HEIGHT - TOP - BOTTOM) / 2;
  // What comes sooner is seldom far off, and what waits is what matters: two thirds of the room are for it.
  const zero = TOP + half * (4 / 3);
  return {
    width,
    height: HEIGHT,
    left,
    right,
    zero,
    bar: Math.max(2, Math.min(12, each * 0.6)),
    x: (step) => left + (step + 0.5) * each,
    tall: (ms) => (ms / most) * half * (4 / 3),
    most,
  };
}

export interface Bar {
  readonly step: number;
  readonly wait: number;
  readonly top: number;
  readonly length: number;
}

/** A bar for each wait that is known; upwards is late. */
export function barsOf(waits: readonly (number | null)[], layout: Layout): readonly Bar[] {
  return waits.flatMap((wait, step): readonly Bar[] => {
    if (wait === null) return [];
    const lowest = -layout.most / 2;
    const shown = Math.max(lowest, Math.min(layout.most, wait));
    const length = Math.abs(layout.tall(shown));
    const top = shown > 0 ? layout.zero - length : layout.zero;
    return [{ step, wait, top, length }];
  });
}

/** Half the height of the band in which the ear hears no unevenness: 6 ms, or 2.5 per cent of slower notes. */
export const audibleOf = (interval: number | null, layout: Layout): number =>
  layout.tall(leastHeard(interval ?? 0));

/** Steps at which a hand turns round. */
export function turnsOf(notes: readonly ScoreNote[]): readonly number[] {
  const way = (step: number): number =>
    Math.sign(notes[step]!.keys[0]!.midi - notes[step - 1]!.keys[0]!.midi);
  return notes.flatMap((_, step) =>
    step > 0 && step < notes.length - 1 && way(step) !== way(step + 1) ? [step] : [],
  );
}
