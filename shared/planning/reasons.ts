/** Why an entry is on the list, as data and as a sentence. */
import { daysBetween } from '../log/day';
import { type Day, FLUENCIES } from '../log/events';
import { type ChordId, chordOf } from '../music/chords';
import type { Way } from '../music/deck';
import type { Hand } from '../music/fingering/types';
import { type Grouping, markOf, type Tempo } from '../music/tempo';
import type { LastRun } from './student';
import { type StageTurn, turnText } from './turns';

/** The item of an entry that lacks most, as the model sees it. */
export interface Weakest {
  /** Named in a round; null in an entry of one item. */
  readonly chord: ChordId | null;
  readonly last: LastRun;
  readonly day: Day;
  readonly reach: Tempo;
}

/** What may be expected today of the item that lacks most. */
interface Expected {
  readonly reach: Tempo;
}

/** The stage of an entry that is new was opened by what was played. */
export interface Opened {
  /** The one of a round for which it is told; null in an entry of one item. */
  readonly chord: ChordId | null;
  readonly turn: StageTurn;
  readonly day: Day;
}

export type Reason =
  | ({ readonly kind: 'wished' } & Expected)
  /** In the week before the date: a whole round at the target before anything else. */
  | ({ readonly kind: 'cold' } & Expected)
  /** Every tenth entry of a note goes back a stage, of single hands to the one that lags behind the other if one does. */
  | ({ readonly kind: 'look-back'; readonly way: Way; readonly isLagging: boolean } & Expected)
  /** Played in this way for the first time; `below` is the stage whose hold opened it. */
  | {
      readonly kind: 'new';
      readonly below: Way | null;
      readonly opened: Opened | null;
      readonly reach: Tempo;
    }
  /** On the list for another time today. */
  | ({ readonly kind: 'again'; readonly times: number } & Expected)
  /** Days without practice. */
  | ({ readonly kind: 'rested' } & Weakest)
  /** Most tempo to gain for the time it takes. */
  | ({ readonly kind: 'short'; readonly target: Tempo } & Weakest)
  /** Not asked for itself, but what it does for four octaves is the most to gain: their reach and what is asked there. */
  | { readonly kind: 'serves'; readonly reach: Tempo; readonly target: Tempo }
  /** The other hand is sore. */
  | { readonly kind: 'spared'; readonly sore: Hand }
  /** A hand is sore, and the head can work. */
  | { readonly kind: 'mental' }
  /** At or above the target. */
  | ({ readonly kind: 'keep' } & Weakest);

export const HANDS_IN_WORDS: Readonly<Record<Way, string>> = {
  'right.2': 'right hand, two octaves',
  'left.2': 'left hand, two octaves',
  'together.2': 'hands together, two octaves',
  'together.4': 'hands together, four octaves',
  'together.contrary': 'hands together, contrary motion',
  'right.4': 'right hand, four octaves',
  'left.4': 'left hand, four octaves',
};

const ORDINALS = ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth'];
const SMALL_NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
];

export function agoInWords(from: Day, to: Day): string {
  const days = daysBetween(from, to);
  if (days <= 0) return 'earlier today';
  if (days === 1) return 'yesterday';
  return `${SMALL_NUMBERS[days] ?? days} days ago`;
}

/** "60 (4 notes a beat)" */
export const tempoText = (tempo: Tempo, grouping: Grouping): string =>
  `${markOf(tempo, grouping)} (${grouping} notes a beat)`;

function lastText({ chord, last, day }: Weakest, grouping: Grouping): string {
  const run = `last ${FLUENCIES[last.fluency]} at ${markOf(last.tempo, grouping)}, ${agoInWords(last.day, day)}`;
  return chord === null ? capitalised(run) : `Weakest is ${chordOf(chord).shortName}: ${run}`;
}

function openedText(below: Way, opened: Opened | null, grouping: Grouping): string {
  if (opened === null) return `as ${HANDS_IN_WORDS[below]} holds`;
  const { chord, turn, day } = opened;
  const which = chord === null ? '' : ` for ${chordOf(chord).shortName}`;
  return `opened${which} ${agoInWords(turn.day, day)}${turnText(turn, grouping)}`;
}

const lookBackText = (isLagging: boolean): string =>
  isLagging
    ? 'every tenth time, to the hand that lags behind the other'
    : 'every tenth time: no hand may lag behind unseen';

export const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** One or two sentences that a student understands; tempos are metronome marks. */
export function reasonText(reason: Reason, grouping: Grouping): string {
  const mark = (tempo: Tempo): number => markOf(tempo, grouping);
  switch (reason.kind) {
    case 'wished':
      return `Asked for by your teacher. Likely even at ${mark(reason.reach)}.`;
    case 'cold':
      return `As on the day itself: once, cold, at the tempo that is asked. Likely even at ${mark(reason.reach)}.`;
    case 'look-back':
      return `Back to ${HANDS_IN_WORDS[reason.way]}, as ${lookBackText(reason.isLagging)}. Likely even at ${mark(reason.reach)}.`;
    case 'new':
      return reason.below === null
        ? `Not played yet. Likely even at ${mark(reason.reach)}; the first runs will show.`
        : `New, ${openedText(reason.below, reason.opened, grouping)}. Likely even at ${mark(reason.reach)}.`;
    case 'again':
      return `For the ${ORDINALS[reason.times] ?? 'next'} time today: still the most to gain. Likely even at ${mark(reason.reach)}.`;
    case 'rested':
      return `${lastText(reason, grouping)}. After the pause likely even at ${mark(reason.reach)}.`;
    case 'short':
      return `${lastText(reason, grouping)}. Likely even at ${mark(reason.reach)} today; ${mark(reason.target)} is asked.`;
    case 'serves':
      return `For four octaves, as two are the same moves in half the time. Over four likely even at ${mark(reason.reach)} today; ${mark(reason.target)} is asked.`;
    case 'spared':
      return `Slowly, as the ${reason.sore} hand rests. Stop at once if this one hurts too.`;
    case 'mental':
      return 'Without playing: name each note before the beat comes to it, hear it, and see the finger.';
    case 'keep':
      return `${lastText(reason, grouping)}. Likely even at ${mark(reason.reach)}: played to keep it.`;
  }
}
