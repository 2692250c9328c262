/** How large the music is set, and which systems are to be seen, in a box of pixels. */
import type { Score } from '../score';
import {
  type EngravedNote,
  type EngravedStaff,
  type EngravedSystem,
  engravingOf,
} from './engraving';
import { beatOf, groupBy } from './placed';
import { stepOnStaff } from './reading';
import { breakerOf } from './systems';

export interface Box {
  /** In px. */
  readonly width: number;
  readonly height: number;
}

export interface Page {
  /** The distance of two lines of the staff, in px. */
  readonly space: number;
  readonly systems: readonly EngravedSystem[];
  /** How many systems are seen at once. */
  readonly slots: number;
}

/** Staff spaces in px: readable a metre away, and not so large that the eye has to travel. */
const SMALLEST = 7;
const LARGEST = 14;
const STEP = 0.25;

/** Of a staff, without what stands above and below. */
export const STAFF_HEIGHT = 4;
/** The least distance of two staves of a system. */
export const STAFF_GAP = 5;
/** Kept free above and below a system. */
export const SYSTEM_MARGIN = 1;
const MIDDLE_LINE = 4;
const STEM = 4;
const SIGN = 2.4;
/** The distance of signs from the note and from each other is in these heights. */
const FINGER = 2;
const CORNER = 1.1;
const ACCENT = 1.6;
const WORD = 2.7;
const FIGURE = 2.4;
/** Of a head or a tie that stands out. */
const LEAST = 0.5;

/** How far beyond its lines a staff reaches in one beat, in spaces. */
interface Reach {
  readonly above: number;
  readonly below: number;
}

/** What stands around a note on its hand's side: right above, left below. */
function signsHeight({ keys, change, isAccented, isFirstHeld }: EngravedNote): number {
  const fingers = keys.filter(({ finger }) => finger !== null).length;
  const [corner, accent] = [change ? CORNER : 0, isAccented ? ACCENT : 0];
  return Math.max(LEAST, fingers * FINGER + corner + accent + (isFirstHeld ? WORD : 0));
}

/** An estimate from above for each beat: heads, stems, triplets, fingers, octave signs. */
function reachesOf(staff: EngravedStaff): ReadonlyMap<number, Reach> {
  const beats = groupBy(staff.notes, ({ place }) => beatOf(place));
  const figured = staff.triplets.filter(({ hasFigure }) => hasFigure);
  const beatsWithFigure = new Set(
    figured.map(({ group }) => beatOf(staff.notes[group[0]!]!.place)),
  );
  const reaches = [...beats].map(([beat, notes]) => {
    const steps = notes.flatMap(({ keys, reading }) =>
      keys.map(({ written }) => stepOnStaff(written, { ...reading, octaves: 0 })),
    );
    const [highest, lowest] = [Math.max(8, ...steps), Math.min(0, ...steps)];
    const isStemUp = (Math.max(...steps) + Math.min(...steps)) / 2 < MIDDLE_LINE;
    const signs = (sign: number): number =>
      notes.some(({ reading }) => Math.sign(reading.octaves) === sign) ? SIGN : 0;
    const tip = isStemUp ? Math.max(...steps) / 2 + STEM - STAFF_HEIGHT : 0;
    const foot = isStemUp ? 0 : STEM - Math.min(...steps) / 2;
    const around = Math.max(...notes.map(signsHeight));
    const figure = beatsWithFigure.has(beat) ? FIGURE : 0;
    const above = Math.max(highest / 2 - STAFF_HEIGHT, tip) + figure + signs(1);
    const below = Math.max(-lowest / 2, foot) + figure + signs(-1);
    return [
      beat,
      {
        above: above + (staff.hand === 'right' ? around : LEAST),
        below: below + (staff.hand === 'left' ? around : LEAST),
      },
    ] as const;
  });
  return new Map(reaches);
}

/** An estimate from above, in spaces. */
export function heightOf(system: EngravedSystem): number {
  const reaches = system.staves.map(reachesOf);
  const [upper, lower] = [reaches[0]!, reaches.at(-1)!];
  const gaps = [...upper].map(([beat, { below }]) => below + (lower.get(beat)?.above ?? 0));
  const between = reaches.length === 1 ? 0 : STAFF_HEIGHT + Math.max(STAFF_GAP, ...gaps);
  return (
    Math.max(...[...upper.values()].map(({ above }) => above)) +
    STAFF_HEIGHT +
    between +
    Math.max(...[...lower.values()].map(({ below }) => below)) +
    (system.touches.length > 0 ? SIGN : 0) +
    2 * SYSTEM_MARGIN
  );
}

/**
 * How many systems must be seen at once, so that with each arpeggio of a round the beginning of the next is seen: one
 * more than the longest needs.
 */
function systemsForNext(score: Score, systems: readonly EngravedSystem[]): number {
  const starts = [0, ...score.joins];
  const counts = starts.map((start, i) => {
    const end = starts[i + 1] ?? Infinity;
    return systems.filter(({ from, to }) => from < end && to > start).length;
  });
  return Math.min(systems.length, Math.max(...counts) + 1);
}

/** How many systems in a row fit, wherever one begins. */
function fitting(heights: readonly number[], height: number): number {
  let count = heights.length;
  const isTooMany = (): boolean =>
    heights.some((_, i) => {
      const shown = heights.slice(i, i + count);
      return shown.length === count && shown.reduce((sum, one) => sum + one, 0) > height;
    });
  while (count > 0 && isTooMany()) count -= 1;
  return count;
}

interface Setting extends Page {
  /** Wherever one plays, the beginning of the next arpeggio is seen as well; a single one is seen as a whole. */
  readonly showsNext: boolean;
}

/**
 * The largest setting of a score, from place `from` to place `to`, that shows in the box all of an arpeggio, or in a
 * round the one that runs and the beginning of the next; where even the smallest doesn't, the largest that shows two
 * systems, and at worst one.
 */
export function pageOf(score: Score, box: Box, from = 0, to = Infinity): Page {
  const breakInto = breakerOf(score, from, to);
  /** Most sizes lead to the same few ways of breaking. */
  const known = new Map<
    string,
    { systems: readonly EngravedSystem[]; heights: readonly number[] }
  >();
  const setIn = (space: number) => {
    const stretches = breakInto(box.width / space);
    const code = stretches.map((stretch) => stretch.from).join(' ');
    const found = known.get(code);
    if (found) return found;
    const systems = engravingOf(score, stretches);
    const made = { systems, heights: systems.map(heightOf) };
    known.set(code, made);
    return made;
  };
  const pageWith = (space: number): Setting => {
    const { systems, heights } = setIn(space);
    const slots = fitting(heights, box.height / space);
    return {
      space,
      systems,
      slots: Math.max(1, slots),
      showsNext: slots >= systemsForNext(score, systems),
    };
  };
  const smallest = pageWith(SMALLEST);
  if (smallest.showsNext) return largest(smallest, pageWith, ({ showsNext }) => showsNext);
  return largest(smallest, pageWith, ({ slots }) => slots > 1);
}

/** The largest setting that is good, found by halving; `smallest` where none is known to be. */
function largest(
  smallest: Setting,
  settingWith: (space: number) => Setting,
  isGood: (setting: Setting) => boolean,
): Setting {
  let best = smallest;
  let [low, high] = [0, Math.round((LARGEST - SMALLEST) / STEP)];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    const setting = settingWith(SMALLEST + middle * STEP);
    if (isGood(setting)) [best, low] = [setting, middle];
    else high = middle - 1;
  }
  return best;
}

/** The number of the system that sounds at `place`; the first before anything sounds. */
export function systemAt(systems: readonly EngravedSystem[], place: number | null): number {
  const found = systems.findLastIndex(({ from }) => place !== null && from <= place);
  return Math.max(0, found);
}

/**
 * Which system each slot of a page shows while the system `now` sounds. Nothing moves under the eyes: when a system has
 * been played, the slot that it leaves shows the next one that is not seen yet, until none is left.
 */
export function slotsAt(now: number, slots: number, count: number): readonly number[] {
  const seen = Math.min(slots, count);
  return Array.from({ length: seen }, (_, slot) => {
    const ahead = now + ((slot - (now % seen) + seen) % seen);
    return ahead < count ? ahead : ahead - seen;
  });
}
