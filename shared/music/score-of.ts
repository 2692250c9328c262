/** An item or a whole round as a score: the notes, lengths, fingers and position changes of each hand. */
import { handsOf, type Item } from './deck';
import { fingersOfSteps } from './fingering/item';
import { leavesPosition } from './fingering/positions';
import type { Finger, FingerPlan, Hand } from './fingering/types';
import { PARTS_OF_BEAT, type Score, type ScoreNote } from './score';
import { type Key, roundIntervals, type SequenceOptions, sequenceOf } from './sequence';
import { ownKeyOf } from './spelling';
import type { Grouping, Tempo } from './tempo';

export interface ScoreOptions extends SequenceOptions {
  readonly title: string;
  readonly tempo: Tempo;
  readonly grouping: Grouping;
  /** The fingering of a hand that plays, computed or the person's own; null leaves its notes without fingers. */
  readonly fingeringOf: (item: Item, hand: Hand) => FingerPlan | null;
  /** Whether each chord is written in its own key, or all with accidentals alone. */
  readonly hasKeySignatures?: boolean;
  /** Whether to mark short touches of the pedal that carry the sound over each change of position. */
  readonly pedal: boolean;
}

export interface FingeredKey {
  readonly key: Key;
  readonly finger: Finger | null;
}

function fingeredKeys(item: Item, hand: Hand, options: ScoreOptions): readonly FingeredKey[] {
  const hands = handsOf(item.way);
  if (hands !== hand && hands !== 'together') return [];
  const steps = sequenceOf(item, options);
  const plan = options.fingeringOf(item, hand);
  const fingers = fingersOfSteps(steps, plan ? { [hand]: plan } : {});
  return steps.map((step, i) => ({ key: step[hand]!, finger: fingers[i]![hand] }));
}

/** How the hand comes from one key to the next: away from the thumb's side it is the thumb that goes under. */
export function changeTo(hand: Hand, from: FingeredKey, to: FingeredKey): ScoreNote['change'] {
  if (from.finger === null || to.finger === null) return null;
  const isUp = to.key.midi > from.key.midi;
  const [start, end] = [{ finger: from.finger }, { finger: to.finger }];
  if (!(isUp ? leavesPosition(hand, start, end) : leavesPosition(hand, end, start))) return null;
  return isUp === (hand === 'right') ? 'thumb under' : 'hand over';
}

/** Whether the hand can play the one after the other: within a position, or by a pass of the thumb. */
function canFollow(hand: Hand, from: FingeredKey, to: FingeredKey): boolean {
  const change = changeTo(hand, from, to);
  const [thumb, other] = change === 'thumb under' ? [to, from] : [from, to];
  return change === null || (thumb.finger === 1 && other.finger !== 1);
}

/**
 * Two arpeggios as one line. The note that they share is written as the next one's beginning, in its spelling and with
 * its first finger: that is what has to be read ahead, and the hand must go on from it. Only where the hand cannot come
 * to that finger, but can go on from the one with which it arrives, does it keep the latter, as a player would.
 */
function join(
  hand: Hand,
  before: readonly FingeredKey[],
  next: readonly FingeredKey[],
): readonly FingeredKey[] {
  const [start, second] = next;
  if (!start || !second || before.length < 2) return next;
  const kept = { key: start.key, finger: before.at(-1)!.finger };
  const keepsFinger = !canFollow(hand, before.at(-2)!, start) && canFollow(hand, kept, second);
  return [...before.slice(0, -1), keepsFinger ? kept : start, ...next.slice(1)];
}

/** The last note lasts until a beat ends, but half a beat at least. */
function lastLength(place: number): number {
  const rest = PARTS_OF_BEAT - (place % PARTS_OF_BEAT);
  return rest < PARTS_OF_BEAT / 2 ? rest + PARTS_OF_BEAT : rest;
}

function notesOf(items: readonly Item[], hand: Hand, options: ScoreOptions): readonly ScoreNote[] {
  const keys = items
    .map((item) => fingeredKeys(item, hand, options))
    .reduce((before, next) => join(hand, before, next), []);
  const part = PARTS_OF_BEAT / options.grouping;
  const changes = keys.map((one, i) => (i === 0 ? null : changeTo(hand, keys[i - 1]!, one)));
  return keys.map((one, i): ScoreNote => {
    const change = changes[i]!;
    const isLast = i === keys.length - 1;
    return {
      keys: [one.key],
      fingers: [one.finger],
      length: isLast ? lastLength(i * part) : part,
      change,
      ...(options.pedal && changes[i + 1] ? { hasPedal: true } : {}),
    };
  });
}

const keysOf = (items: readonly Item[], { blackNames }: ScoreOptions) =>
  items.map(({ note, chord }) => ownKeyOf(note, chord, blackNames));

/**
 * The score of one item, or of a round: items of one starting note and one way, each of which begins on the last note
 * of the one before. That note is played once. Three or four notes to the beat; the last of all ends with a beat.
 */
export function scoreOf(items: readonly Item[], options: ScoreOptions): Score {
  const { title, tempo, grouping } = options;
  const starts = items.map((_, i) => roundIntervals(items.slice(0, i), options.contraryForm));
  const joins = starts.slice(1).map((steps) => steps * (PARTS_OF_BEAT / grouping));
  return {
    title,
    tempo,
    grouping,
    right: notesOf(items, 'right', options),
    left: notesOf(items, 'left', options),
    joins,
    ...(options.hasKeySignatures ? { keySignatures: keysOf(items, options) } : {}),
  };
}
