/**
 * Which beats are due: arithmetic on the seconds of one clock. The metronome with sound, the silent one and the offline
 * test of every click all go through here.
 */

/**
 * How far ahead clicks are handed to the audio clock, in seconds. A click that is handed over can still be silenced, so
 * looking far ahead costs nothing, and a busy page that ticks late loses no click. A hidden page may tick once a second.
 */
export const LOOK_AHEAD = { visible: 0.25, hidden: 2 } as const;

export interface Grid {
  /** When beat 0, the first beat of the music, sounds: seconds on the metronome's clock. */
  readonly start: number;
  readonly beatsPerMinute: number;
  /** Beats before beat 0. They have the indices -countInBeats to -1. */
  readonly countInBeats: number;
  /** Null where the music has no bars: only beat 0 is accented then, so that the end of the count-in is heard. */
  readonly beatsPerBar: number | null;
}

export interface GridBeat {
  readonly index: number;
  /** Seconds on the metronome's clock. */
  readonly time: number;
  readonly isAccent: boolean;
}

export interface Due {
  /** Beats to be clicked. */
  readonly ahead: readonly GridBeat[];
  /** Beats whose time has passed: too late to click, but not to be counted. */
  readonly late: readonly GridBeat[];
  /** Index of the first beat that is not due yet. */
  readonly next: number;
}

const isCount = (value: number, least: number): boolean =>
  Number.isInteger(value) && value >= least;

/** Throws a RangeError for numbers that are no grid: an endless tempo would keep the scheduler busy for ever. */
export function checkGrid({
  beatsPerMinute,
  countInBeats,
  beatsPerBar,
}: Omit<Grid, 'start'>): void {
  if (!Number.isFinite(beatsPerMinute) || beatsPerMinute <= 0) {
    throw new RangeError(`beats per minute: ${beatsPerMinute}`);
  }
  if (!isCount(countInBeats, 0)) throw new RangeError(`beats of count-in: ${countInBeats}`);
  if (beatsPerBar !== null && !isCount(beatsPerBar, 1)) {
    throw new RangeError(`beats in a bar: ${beatsPerBar}`);
  }
}

/** Seconds on the metronome's clock. Multiplied and never added up, so that an hour of beats does not drift. */
export const timeOf = (grid: Grid, index: number): number =>
  grid.start + (index * 60) / grid.beatsPerMinute;

/** Beat 0 opens a bar, and the count-in is barred backwards from it: in bars of four, beat -4 is accented. */
export const isAccented = ({ beatsPerBar }: Grid, index: number): boolean =>
  beatsPerBar === null ? index === 0 : index % beatsPerBar === 0;

/** The beats from index `next` on that come before `now + lookAhead` (seconds), each in time order. */
export function beatsDue(grid: Grid, next: number, now: number, lookAhead: number): Due {
  const ahead: GridBeat[] = [];
  const late: GridBeat[] = [];
  let index = next;
  for (; timeOf(grid, index) < now + lookAhead; index += 1) {
    const time = timeOf(grid, index);
    (time < now ? late : ahead).push({ index, time, isAccent: isAccented(grid, index) });
  }
  return { ahead, late, next: index };
}

/** What the beats are scheduled on: the audio clock, or the page's clock when there is no sound. */
export interface BeatClock {
  /** Seconds. */
  now(): number;
  click(beat: GridBeat): void;
}

/**
 * Walks along the grid: each call clicks what is due within `lookAhead` seconds and returns all beats newly due, the late
 * ones too. Each beat is handed out once, however irregular the calls.
 */
export function walkGrid(grid: Grid, clock: BeatClock): (lookAhead: number) => readonly GridBeat[] {
  // Subtracted, because -countInBeats would be -0 without a count-in.
  let next = 0 - grid.countInBeats;
  return (lookAhead) => {
    const due = beatsDue(grid, next, clock.now(), lookAhead);
    next = due.next;
    for (const beat of due.ahead) clock.click(beat);
    return [...due.late, ...due.ahead];
  };
}
