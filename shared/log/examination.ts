/** An examination as the log keeps it: what a jury would have asked, and how each of it was marked. */
import type { ChordId } from '../music/chords';
import type { ItemId, Stage, StartingNote } from '../music/deck';
import type { Tempo } from '../music/tempo';
import type { Fluency } from './events';

export interface ExaminationSettings {
  /** What may be asked: each chord from each note in each stage. */
  readonly notes: readonly StartingNote[];
  readonly chords: readonly ChordId[];
  readonly stages: readonly Stage[];
  /** How many are drawn, and how many of them must be at least even to pass. */
  readonly count: number;
  readonly toPass: number;
  /** Of the target tempo of each item, in per cent. */
  readonly tempoPercent: number;
  /** Whether a beat is heard. */
  readonly beat: boolean;
}

/** Items drawn at most. */
export const MOST_DRAWN = 30;
export const SLOWEST_PERCENT = 50;
export const FASTEST_PERCENT = 120;
/** Seeds have six digits at most, so that one can be written down and typed in again. */
export const LARGEST_SEED = 999_999;

export interface MarkedItem {
  readonly item: ItemId;
  readonly tempo: Tempo;
  readonly fluency: Fluency;
}
