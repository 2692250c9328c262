/** A stretch of a score at a tempo, once or again and again, after a count-in: what sounds when, as pure sums. */
import type { Hands } from '../../shared/music/deck';
import { type Moment, momentsOf, type Stretch } from '../../shared/music/playing';
import { PARTS_OF_BEAT, type Score } from '../../shared/music/score';
import { due, type Row, type Timed } from './walk';

export interface Playing {
  readonly score: Score;
  readonly hands: Hands;
  readonly stretch: Stretch;
  readonly repeats: boolean;
  readonly beatsPerMinute: number;
  /** Whether the notes are heard. */
  readonly piano: boolean;
  /** Whether the beats are heard. */
  readonly beat: boolean;
}

export interface Passage {
  readonly playing: Playing;
  readonly moments: readonly Moment[];
  readonly countInBeats: number;
  /** When the beginning of the stretch sounds for the first time, in seconds of the clock. */
  readonly start: number;
}

export interface Stroke {
  readonly midi: number;
  /** Seconds. */
  readonly length: number;
  readonly isAccented: boolean;
}

/** What begins at one time. */
export interface Turn extends Timed {
  /** Parts of a beat from the beginning of the score; null while beats are counted in, and at the end. */
  readonly place: number | null;
  readonly strokes: readonly Stroke[];
  readonly click: 'accent' | 'normal' | null;
  readonly isEnd: boolean;
}

/** Seconds. Closer than this, two times are the same. */
const ALMOST = 1e-6;

/** Throws a RangeError for a tempo that is none and a stretch that is empty: they would keep the scheduler busy for ever. */
export function passageOf(playing: Playing, start: number, countInBeats: number): Passage {
  const { score, hands, stretch, beatsPerMinute } = playing;
  if (!Number.isFinite(beatsPerMinute) || beatsPerMinute <= 0) {
    throw new RangeError(`beats per minute: ${beatsPerMinute}`);
  }
  const moments = momentsOf(score, hands, stretch);
  if (moments.length === 0) throw new RangeError(`stretch: ${stretch.from} to ${stretch.to}`);
  return { playing, moments, countInBeats, start };
}

const secondsPerPart = ({ beatsPerMinute }: Playing): number => 60 / beatsPerMinute / PARTS_OF_BEAT;

const lengthOf = ({ stretch }: Playing): number => stretch.to - stretch.from;

/** Multiplied and never added up, so that an hour of repetitions does not drift. */
const timeOf = ({ playing, start }: Passage, parts: number): number =>
  start + parts * secondsPerPart(playing);

/** The beats of the count-in have the indices -countInBeats to -1. The beginning of the stretch is accented. */
export const turnsOf =
  (passage: Passage): Row<Turn> =>
  (index) => {
    const { playing, moments } = passage;
    const { stretch, repeats, piano, beat } = playing;
    const silent = { place: null, strokes: [], click: null, isEnd: false };
    if (index < 0)
      return { ...silent, time: timeOf(passage, index * PARTS_OF_BEAT), click: 'normal' };
    const round = Math.floor(index / moments.length);
    if (round > 0 && !repeats) {
      if (index > moments.length) return null;
      return { ...silent, time: timeOf(passage, lengthOf(playing)), isEnd: true };
    }
    const { place, sounds, isBeat } = moments[index % moments.length]!;
    const strokes = sounds.map(({ midi, start, end, isAccented }) => ({
      midi,
      length: (end - start) * secondsPerPart(playing),
      isAccented,
    }));
    return {
      place,
      time: timeOf(passage, round * lengthOf(playing) + place - stretch.from),
      strokes: piano ? strokes : [],
      click: beat && isBeat ? (place === stretch.from ? 'accent' : 'normal') : null,
      isEnd: false,
    };
  };

/** Index of the first turn that does not come before a time. */
export const indexAt = (passage: Passage, time: number): number =>
  due(turnsOf(passage), 0 - passage.countInBeats, { now: time - ALMOST, lookAhead: 0 }).next;

/**
 * The passage as it goes on in another way from `time` on: at the place where it is then, with what is left of the
 * count-in, or from the beginning of a stretch in which that place is not.
 */
export function goOn(passage: Passage, playing: Playing, time: number): Passage {
  const { from, to } = playing.stretch;
  const passed = (time - passage.start) / secondsPerPart(passage.playing);
  if (passed < 0) {
    return passageOf(playing, time - passed * secondsPerPart(playing), passage.countInBeats);
  }
  const inRound = passage.playing.repeats ? passed % lengthOf(passage.playing) : passed;
  const place = passage.playing.stretch.from + inRound;
  const start =
    place >= from && place < to ? time - (place - from) * secondsPerPart(playing) : time;
  return passageOf(playing, start, 0);
}
