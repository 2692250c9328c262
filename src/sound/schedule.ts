/** Which beats are due: the metronome with sound, the silent one and the offline test of every click go through here. */
import { type Timed, type Walk, walkRow } from './walk';

/** Beats that are counted before the music begins. */
export const COUNT_IN = 4;

export interface Grid {
  /** When beat 0, the first beat of the music, sounds: seconds on the metronome's clock. */
  readonly start: number;
  readonly beatsPerMinute: number;
  /** Beats before beat 0. They have the indices -countInBeats to -1. */
  readonly countInBeats: number;
  /** Null where the music has no bars: only beat 0 is accented then, so that the end of the count-in is heard. */
  readonly beatsPerBar: number | null;
}

export interface GridBeat extends Timed {
  readonly index: number;
  readonly isAccent: boolean;
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

export const beatAt = (grid: Grid, index: number): GridBeat => ({
  index,
  time: timeOf(grid, index),
  isAccent: isAccented(grid, index),
});

/** What the beats are scheduled on: the audio clock, or the page's clock when there is no sound. */
export interface BeatClock {
  /** Seconds. */
  now(): number;
  click(beat: GridBeat): void;
}

/** Walks along the grid and clicks its beats, those of the count-in first; see walkRow. */
export const walkGrid = (grid: Grid, { now, click }: BeatClock): Walk<GridBeat> =>
  // Subtracted, because -countInBeats would be -0 without a count-in.
  walkRow((index) => beatAt(grid, index), 0 - grid.countInBeats, { now, sound: click });
