/** Where a run that was heard waited longest: the place that a drill is for. */
import type { RunTake } from '../../log/run-take';
import { chordOf } from '../../music/chords';
import { type Item, motionOf } from '../../music/deck';
import type { Hand } from '../../music/fingering/types';

export interface LateNote {
  readonly hand: Hand;
  /** Index of the note in the run. */
  readonly step: number;
}

/** Milliseconds from which a wait is worth a drill (P): clearly more than what is only just heard. */
const LONG = 80;

/** Null where no note came so late. */
export function lateNoteOf({ hands }: RunTake): LateNote | null {
  let longest = LONG;
  let late: LateNote | null = null;
  for (const hand of ['right', 'left'] as const) {
    for (const [step, wait] of (hands[hand]?.waits ?? []).entries()) {
      if (wait === null || wait < longest) continue;
      longest = wait;
      late = { hand, step };
    }
  }
  return late;
}

/**
 * The index of the same note in the run over two octaves, up and down, of which drills are made: from the end of the
 * keyboard that is nearer. Null for contrary motion, which goes other ways.
 */
export function placeInDrill({ chord, way }: Item, step: number): number | null {
  const motion = motionOf(way);
  if (motion === 'contrary') return null;
  const twoOctaves = 2 * chordOf(chord).intervals.length;
  const top = motion === '4' ? 2 * twoOctaves : twoOctaves;
  const within = (distance: number): number =>
    distance > twoOctaves ? distance - twoOctaves : distance;
  return step <= top ? within(step) : 2 * twoOctaves - within(2 * top - step);
}
