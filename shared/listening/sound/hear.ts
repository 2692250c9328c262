/** Makes a take of the sound of a run: what of the expected notes was played, and when. */
import type { Expected } from '../expected';
import type { HeardNote, Take } from '../take';
import { evidenceIn } from './evidence';
import { follow, usualOf } from './follow';
import { candidatesOf } from './onsets';
import { risesOf } from './rises';
import { QUIET_ENOUGH, type Room, roomOf } from './room';
import { betweenHands, snapped } from './snap';
import type { Sound } from './spectrum';
import { tuningNow, tuningOf } from './tuning';
import { type Verdict, verdictsOf } from './verdict';

export interface HearOptions {
  /** Notes a minute that were set; the player's own are found from there. */
  readonly tempo: number;
  /** Cents of the piano from A4 = 440 Hz as it was checked, null if it was not. Another piano is known by its sound. */
  readonly tuning: number | null;
  /** Whether the browser changes the sound: echo cancelled, noise suppressed or loudness levelled. */
  readonly isFiltered: boolean;
}

export interface Hearing {
  readonly take: Take;
  readonly room: Room;
  /** Whether the expected notes were found in the sound at all. */
  readonly isFollowed: boolean;
}

/** Semitones below the lowest and above the highest note at which wrong ones are looked for. */
const BEYOND = 3;
/** Share of the steps at which a note must be right, and how many at least. */
const FOLLOWED = 0.5;
const FEWEST = 6;
/** Confidence of a note that is heard, in a noisy room, through a filter; and of one that is not sure. */
const SURE = 0.95;
const NOISY = 0.8;
const FILTERED = 0.6;
const NOT_SURE = 0.3;

/** The times of the take are those of the sound. Both hands' notes have the time of their moment. */
export function hear(sound: Sound, expected: Expected, options: HearOptions): Hearing {
  const tuning = tuningNow(tuningOf(sound), options.tuning);
  const room = roomOf(sound);
  const steps = judgedSteps(sound, expected, { tempo: options.tempo, tuning, room });
  const confidence = options.isFiltered ? FILTERED : isQuiet(room) ? SURE : NOISY;
  // After the last sure note nothing more was played, as far as can be told.
  const played = steps.slice(0, steps.findLastIndex(isSure) + 1);
  const notes = played.flatMap(({ at, verdicts }, step) =>
    verdicts.flatMap((verdict, i): readonly HeardNote[] => {
      if (verdict.kind === 'missed') return [];
      const midi = verdict.kind === 'wrong' ? verdict.midi : expected.steps[step]![i]!.key.midi;
      const sure = verdict.kind === 'unsure' ? NOT_SURE : confidence;
      return [{ midi, on: at, off: null, loudness: null, confidence: sure }];
    }),
  );
  const right = steps.filter(({ verdicts }) => verdicts.some(({ kind }) => kind === 'right'));
  return {
    take: { source: 'microphone', notes, pedal: null, hasTimeOfEachHand: false },
    room,
    isFollowed: right.length >= FOLLOWED * played.length && right.length >= FEWEST,
  };
}

interface JudgedStep {
  /** Seconds. */
  readonly at: number;
  readonly verdicts: readonly Verdict[];
}

const isSure = ({ verdicts }: JudgedStep): boolean =>
  verdicts.some(({ kind }) => kind === 'right' || kind === 'wrong');

const isQuiet = ({ overNoise }: Room): boolean => overNoise >= QUIET_ENOUGH;

interface Conditions {
  readonly tempo: number;
  readonly tuning: number;
  readonly room: Room;
}

function judgedSteps(
  sound: Sound,
  { steps }: Expected,
  { tempo, tuning, room }: Conditions,
): readonly JudgedStep[] {
  const places = follow(risesOf(sound, steps, tuning), steps.length, 60 / tempo);
  const interval = usualOf(places) ?? 60 / tempo;
  const onsets = snapped(places, candidatesOf(sound), interval);
  const moments = steps.some(({ length }) => length > 1) ? betweenHands(places, onsets) : onsets;
  const midis = steps.flatMap((step) => step.map(({ key }) => key.midi));
  const keys = { lowest: Math.min(...midis) - BEYOND, highest: Math.max(...midis) + BEYOND };
  const evidenceAt = evidenceIn(sound, { interval, tuning, keys });
  const evidence = moments.map(({ at }) => evidenceAt(at));
  const totals = evidence.map(({ total }) => total).toSorted((a, b) => a - b);
  const hearability = { usual: totals[totals.length >> 1] ?? 0, isQuiet: isQuiet(room) };
  return moments.map(({ at }, step) => ({
    at,
    verdicts: verdictsOf(steps[step]!, evidence[step]!, hearability),
  }));
}
