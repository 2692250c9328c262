/** The item deck: 12 starting notes x 11 chords = 132 arpeggios, each in 7 ways of playing it = 924 items. */
import { CHORD_IDS, type ChordId } from './chords';

export const WHITE_NOTES = ['c', 'd', 'e', 'f', 'g', 'a', 'b'] as const;
export const BLACK_NOTES = ['db', 'eb', 'gb', 'ab', 'bb'] as const;
/** In the order in which they are learnt: white keys first. */
export const STARTING_NOTES = [...WHITE_NOTES, ...BLACK_NOTES] as const;

export type BlackNote = (typeof BLACK_NOTES)[number];
/** A key of the piano, not a spelling: "db" is the key that is also called C sharp. */
export type StartingNote = (typeof STARTING_NOTES)[number];

export type Hands = 'right' | 'left' | 'together';
export type Motion = '2' | '4' | 'contrary';

/** The five steps of the usual path, easiest first. */
export const STAGES = [
  'right.2',
  'left.2',
  'together.2',
  'together.4',
  'together.contrary',
] as const;
/** Items off the path: help for one hand when four octaves together are stuck. */
export const OFF_PATH = ['right.4', 'left.4'] as const;
/** Hands and motion: the seven of the nine pairs that exist, as contrary motion needs both hands. */
export const WAYS = [...STAGES, ...OFF_PATH] as const;

export type Stage = (typeof STAGES)[number];
export type Way = (typeof WAYS)[number];

export type ArpeggioId = `${StartingNote}.${ChordId}`;
/** Readable and stable: "eb.dominant-65.together.4". Kept in the log for ever, so never renamed. */
export type ItemId = `${ArpeggioId}.${Way}`;

export interface Item {
  readonly id: ItemId;
  /** Place in DECK, 0 to 923: way x 132 + arpeggioIndex. */
  readonly index: number;
  readonly note: StartingNote;
  readonly chord: ChordId;
  readonly way: Way;
  readonly arpeggio: ArpeggioId;
  /** 0 to 131: starting note x 11 + chord. */
  readonly arpeggioIndex: number;
}

export const ARPEGGIO_COUNT = STARTING_NOTES.length * CHORD_IDS.length;

export const DECK: readonly Item[] = WAYS.flatMap((way, wayIndex) =>
  STARTING_NOTES.flatMap((note, noteIndex) =>
    CHORD_IDS.map((chord, chordIndex): Item => {
      const arpeggio: ArpeggioId = `${note}.${chord}`;
      const arpeggioIndex = noteIndex * CHORD_IDS.length + chordIndex;
      const index = wayIndex * ARPEGGIO_COUNT + arpeggioIndex;
      return { id: `${arpeggio}.${way}`, index, note, chord, way, arpeggio, arpeggioIndex };
    }),
  ),
);

const byId = new Map<string, Item>(DECK.map((item) => [item.id, item]));

/** The item of an id that is known to be one. */
export const itemOf = (id: ItemId): Item => byId.get(id)!;

/** The item that an untrusted text names, or null. */
export const parseItemId = (text: string): Item | null => byId.get(text) ?? null;

/** The item of an arpeggio, by index, played in another way. */
export const itemAt = (arpeggioIndex: number, way: Way): Item =>
  DECK[WAYS.indexOf(way) * ARPEGGIO_COUNT + arpeggioIndex]!;

/** The eleven items of one starting note played in one way, in the order of a round. */
export function roundItems(note: StartingNote, way: Way): readonly Item[] {
  const first = STARTING_NOTES.indexOf(note) * CHORD_IDS.length;
  return CHORD_IDS.map((_, chordIndex) => itemAt(first + chordIndex, way));
}

export const isBlack = (note: StartingNote): note is BlackNote =>
  (BLACK_NOTES as readonly string[]).includes(note);

export const handsOf = (way: Way): Hands => way.split('.')[0] as Hands;
export const motionOf = (way: Way): Motion => way.split('.')[1] as Motion;

/** 0 to 4 on the path, -1 off it. */
export const stageIndex = (way: Way): number => (STAGES as readonly string[]).indexOf(way);
