/** Where the music is, told from the beats: pure sums, so that no late timer can move it. */
import type { Grouping } from '../../../shared/music/tempo';
import { COUNT_IN } from '../../sound/schedule';

/** Which beat a position falls on: at the start beat 0 and the first note; moved when the player finds the beat again. */
export interface Anchor {
  readonly beat: number;
  readonly position: number;
  /** Whether the beats before it are a count-in. */
  readonly isCounted: boolean;
}

export interface HeardBeat {
  readonly index: number;
  /** Milliseconds of the page's clock. */
  readonly at: number;
}

export interface Pace {
  readonly msPerBeat: number;
  readonly grouping: Grouping;
}

/** Share of the current beat that is over, 0 to just under 1. */
const passed = (beat: HeardBeat, now: number, { msPerBeat }: Pace): number =>
  Math.min(0.999, Math.max(0, (now - beat.at) / msPerBeat));

/** The number to show while beats are counted in, 1 to COUNT_IN; null once the music is on. */
export function countAt(anchor: Anchor, index: number): number | null {
  if (!anchor.isCounted || index >= anchor.beat) return null;
  return Math.max(1, COUNT_IN + 1 - (anchor.beat - index));
}

/** The step that sounds now, as a position in the course. */
export function positionAt(anchor: Anchor, beat: HeardBeat, now: number, pace: Pace): number {
  if (beat.index < anchor.beat) return anchor.position;
  const steps = Math.floor(passed(beat, now, pace) * pace.grouping);
  return anchor.position + (beat.index - anchor.beat) * pace.grouping + steps;
}

/** The player begins a part now: it falls on the nearest beat, the one just heard or the one to come. */
export function onNearestBeat(position: number, beat: HeardBeat, now: number, pace: Pace): Anchor {
  const isLate = passed(beat, now, pace) < 0.5;
  return { beat: isLate ? beat.index : beat.index + 1, position, isCounted: false };
}

/** The player takes a part again: after a count-in that starts with the next beat. */
export const afterCountIn = (position: number, beat: HeardBeat): Anchor => ({
  beat: beat.index + 1 + COUNT_IN,
  position,
  isCounted: true,
});
