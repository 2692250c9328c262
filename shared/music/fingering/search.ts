/**
 * The best plans of a line, exactly: shortest paths from the bottom note of one octave to that of the next. Each step
 * settles the finger of one chord note, inside the run and (until the first thumb) at the low end; the last step
 * closes the octave and settles the turn at the high end. Paths come out cheapest first (Dijkstra 1959, every state
 * being left as often as there are plans wanted), because no step costs less than nothing.
 */
import { addedCosts } from './cost';
import type { Line } from './line';
import { Queue } from './queue';
import { extraThumb, highEnd, lateThumb, lowEnd, neededThumbs } from './tradition';
import type { Finger, FingerPlan } from './types';

export interface Found {
  readonly plan: FingerPlan;
  readonly cost: number;
}

/** A path so far: the last column of fingers, and the path below it. */
interface Path {
  readonly cost: number;
  /** The chord note that was settled last; the number of notes when the octave is closed. */
  readonly tone: number;
  /** Inside the run; at the close, of the top note. */
  readonly finger: Finger;
  readonly low: Finger;
  /** Whether the thumb has had its first note. */
  readonly begun: boolean;
  readonly below: Path | null;
}

/** Going up inside a run, a finger is followed by a higher one or by the thumb. The fifth is kept for the ends. */
const NEXT: Readonly<Record<Finger, readonly Finger[]>> = {
  1: [2, 3, 4],
  2: [1, 3, 4],
  3: [1, 4],
  4: [1],
  5: [],
};
const LONG: readonly Finger[] = [2, 3, 4];
const INNER: readonly Finger[] = [1, ...LONG];

function bottomOf(path: Path): readonly [first: Finger, second: Finger] {
  let link = path;
  while (link.tone > 1) link = link.below!;
  return [link.below!.finger, link.finger];
}

/** Fingers that the low end may have on a note, given the pattern's finger there. */
function lowChoices(line: Line, below: Path | null, finger: Finger): readonly Finger[] {
  if (finger === 1 || below?.begun) return [finger];
  if (!below) return LONG;
  const next = NEXT[below.low];
  return line.start === 'low'
    ? next.filter((low) => low !== 1)
    : next.filter((low) => low === finger);
}

/** The plans of a line of two octaves or more, cheapest first, at most `count`. */
export function* plansInOrder(line: Line, count: number): Generator<Found> {
  const { size, octaves } = line;
  const added = addedCosts(line);
  const queue = new Queue<Path>();
  const left = new Map<number, number>();

  function step(below: Path | null, finger: Finger): void {
    const tone = below ? below.tone + 1 : 0;
    const under = below?.below ?? null;
    const wasBegun = below?.begun ?? false;
    const begun = wasBegun || finger === 1;
    let inner = octaves * (extraThumb(finger, wasBegun) + lateThumb(line, tone, finger, wasBegun));
    if (tone > 1) inner += (octaves - 1) * added(size + tone, under!.finger, below!.finger, finger);
    for (const low of lowChoices(line, below, finger)) {
      let cost = inner + added(tone, under?.low ?? null, below?.low ?? null, low);
      if (tone === 1) cost += lowEnd(line, below!.low, below!.finger, low);
      queue.add({ cost: cost + (below?.cost ?? 0), tone, finger, low, begun, below });
    }
  }

  function close(path: Path): void {
    const [first, second] = bottomOf(path);
    const { finger, low, below } = path;
    if (!NEXT[finger].includes(first)) return;
    const before = below!.finger;
    const cost =
      path.cost +
      added(size, below!.low, low, first) +
      added(size + 1, low, first, second) +
      (octaves - 2) * (added(size, before, finger, first) + added(size + 1, finger, first, second));
    for (const top of [...NEXT[finger], 5 as const]) {
      if (top === 1 && first !== 1) continue;
      const end = added(line.pitches.length - 1, before, finger, top) + highEnd(top, first);
      queue.add({ cost: cost + end, tone: size, finger: top, low: top, begun: true, below: path });
    }
  }

  /** Two paths in one state have the same ways to go on. */
  function stateOf(path: Path): number {
    const { tone, finger, low, begun, below } = path;
    const [first, second] = tone > 0 ? bottomOf(path) : [finger, 0];
    const bottom = (2 * tone + Number(begun)) * 36 + first * 6 + second;
    return ((bottom * 6 + (below?.finger ?? 0)) * 6 + finger) * 36 + (below?.low ?? 0) * 6 + low;
  }

  for (const first of INNER) step(null, first);
  for (let found = 0; found < count;) {
    const path = queue.take();
    if (!path) return;
    if (path.tone === size) {
      found++;
      yield { plan: planOf(path), cost: path.cost - octaves * neededThumbs(line) };
      continue;
    }
    const state = stateOf(path);
    const times = left.get(state) ?? 0;
    if (times === count) continue;
    left.set(state, times + 1);
    if (path.tone === size - 1) close(path);
    else for (const finger of NEXT[path.finger]) step(path, finger);
  }
}

function planOf(closed: Path): FingerPlan {
  const pattern: Finger[] = [];
  const low: Finger[] = [];
  for (let path = closed.below; path; path = path.below) {
    pattern.unshift(path.finger);
    low.unshift(path.low);
  }
  while (low.length > 1 && low.at(-1) === pattern[low.length - 1]) low.pop();
  return { low, pattern, high: [closed.finger] };
}
