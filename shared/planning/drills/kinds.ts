/** The kinds of drill, their names, and the id by which one is addressed and kept in the log. */
import { type Item, parseItemId } from '../../music/deck';
import type { PositionChange } from '../../music/fingering/positions';
import type { Fingering } from '../../music/fingering/result';
import type { Hand } from '../../music/fingering/types';
import type { HandOfArpeggio } from '../student';

/** Around one position change; without a place, around the one that is hardest for the hand. */
export const JOIN_KINDS = ['join', 'out-and-back', 'groups'] as const;
/** Over the whole of two octaves. */
export const RUN_KINDS = [
  'chords',
  'long-short',
  'short-long',
  'silent-thumb',
  'transfer',
  'accents',
] as const;
/** Kept in the log for ever, so never renamed. */
export const DRILL_KINDS = [...JOIN_KINDS, ...RUN_KINDS, 'opposite'] as const;

export type JoinKind = (typeof JOIN_KINDS)[number];
export type RunKind = (typeof RUN_KINDS)[number];
export type DrillKind = (typeof DRILL_KINDS)[number];

/** "d.major-6.left.join", or "d.major-6.left.join.4" for the change that leads to the fifth note of the run. */
export type DrillId = `${string}.${Hand}.${DrillKind}` | `${string}.${Hand}.${JoinKind}.${number}`;

export interface DrillAddress {
  readonly id: DrillId;
  /** The hand's arpeggio over two octaves. */
  readonly item: Item;
  /** The hand that has the difficulty; in opposite directions both play. */
  readonly hand: Hand;
  readonly kind: DrillKind;
  /** Index of the note of arrival in the run up and down; null for the hardest change, and for whole runs. */
  readonly place: number | null;
}

export const DRILL_NAMES: Readonly<Record<DrillKind, string>> = {
  join: 'The join alone',
  'out-and-back': 'Over the join and back',
  groups: 'Small groups that stop on the thumb',
  chords: 'Each position as a chord',
  'long-short': 'Dotted, the long note first',
  'short-long': 'Dotted, the short note first',
  'silent-thumb': 'The thumb only touches',
  transfer: 'Slow, the weight from finger to finger',
  accents: 'An accent on each finger in turn',
  opposite: 'Hands in opposite directions',
};

export const isJoinKind = (kind: DrillKind): kind is JoinKind =>
  (JOIN_KINDS as readonly string[]).includes(kind);

/** The last place of a run over two octaves of a seventh, up and down. */
const LAST_PLACE = 16;

const PATTERN = /^([a-g]b?\.[\w-]+)\.(right|left)\.([a-z-]+)(?:\.([1-9]\d?))?$/;

/** What an untrusted text names, or null. */
export function parseDrillId(text: string): DrillAddress | null {
  const [, arpeggio, hand, name, digits] = PATTERN.exec(text) ?? [];
  const item = parseItemId(`${arpeggio}.${hand}.2`);
  const kind = DRILL_KINDS.find((one) => one === name);
  if (item === null || kind === undefined) return null;
  const place = digits === undefined ? null : Number(digits);
  if (place !== null && (!isJoinKind(kind) || place > LAST_PLACE)) return null;
  return { id: text as DrillId, item, hand: hand as Hand, kind, place };
}

/** The drill for one change of a run over two octaves: up to its top note and down again. */
export function joinDrillId(
  hand: HandOfArpeggio,
  { fingers }: Fingering,
  { way, to }: PositionChange,
): DrillId {
  const top = fingers.length - 1;
  return `${hand}.join.${way === 'up' ? to.index : 2 * top - to.index}`;
}

/** The hand of an arpeggio that a drill is for. */
export function handOfDrill(id: string): HandOfArpeggio {
  const address = parseDrillId(id);
  if (address === null) throw new RangeError(`not a drill: ${id}`);
  return `${address.item.arpeggio}.${address.hand}`;
}
