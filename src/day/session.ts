/**
 * What is open on the music stand and not yet in the log: which entry, where in it, and the ratings touched so far. It
 * is kept on the device at every step, so that a reload comes back exactly here.
 */
import * as v from 'valibot';
import { takeSchema } from '../../shared/formats/event-schema';
import type { Day, Fluency } from '../../shared/log/events';
import type { RunTake } from '../../shared/log/run-take';
import type { ItemId, StartingNote, Way } from '../../shared/music/deck';
import { parseItemId, STARTING_NOTES, WAYS } from '../../shared/music/deck';
import { FASTEST, SLOWEST, type Tempo } from '../../shared/music/tempo';
import type { Entry } from '../../shared/planning/today';

export { SESSION as SESSION_KEY } from '../store/own-keys';

/** The part of an entry that is needed to play and to record it, should the list change meanwhile. */
export type OpenEntry = Pick<Entry, 'key' | 'kind' | 'note' | 'way' | 'items' | 'isMental'> & {
  /** It is no entry of the list but a probe that places the student: the first, the second … */
  readonly probe?: number;
};

/** What the log calls the entry that its runs belong to: null outside the list. */
export const logKeyOf = ({ key, probe }: OpenEntry): string | null =>
  probe === undefined ? key : null;

/** How one item went: null where it went at the tempo of the whole. */
export interface Rating {
  readonly fluency: Fluency;
  readonly tempo: Tempo | null;
}

export interface Session {
  readonly day: Day;
  readonly entry: OpenEntry;
  /** Place in the entry of the arpeggio that comes next, or is being played. */
  readonly at: number;
  readonly phase: 'playing' | 'rating';
  readonly tempo: Tempo;
  readonly pedal: boolean;
  /** The exceptions, by item: one that is missing was even at the tempo of the whole. */
  readonly ratings: Readonly<Record<string, Rating>>;
  /** What was heard, by item, if the app listened. */
  readonly takes?: Readonly<Record<string, RunTake>>;
}

const tempo = v.pipe(v.number(), v.minValue(SLOWEST), v.maxValue(FASTEST));
const item = v.custom<ItemId>((input) => typeof input === 'string' && parseItemId(input) !== null);
const rating = v.object({
  fluency: v.picklist([0, 1, 2, 3, 4] satisfies Fluency[]),
  tempo: v.nullable(tempo),
});

const schema = v.object({
  day: v.string(),
  entry: v.object({
    key: v.string(),
    kind: v.picklist(['round', 'single']),
    note: v.picklist(STARTING_NOTES satisfies readonly StartingNote[]),
    way: v.picklist(WAYS satisfies readonly Way[]),
    items: v.pipe(v.array(item), v.minLength(1)),
    isMental: v.exactOptional(v.literal(true)),
    probe: v.exactOptional(v.pipe(v.number(), v.integer(), v.minValue(1))),
  }),
  at: v.pipe(v.number(), v.integer(), v.minValue(0)),
  phase: v.picklist(['playing', 'rating']),
  tempo,
  pedal: v.boolean(),
  ratings: v.record(v.string(), rating),
  takes: v.exactOptional(v.record(v.string(), takeSchema)),
});

/** The session in a kept value of any origin; null if there is none, or what is there cannot be one. */
export function readSession(kept: unknown): Session | null {
  const result = v.safeParse(schema, kept);
  if (!result.success || result.output.at >= result.output.entry.items.length) return null;
  return result.output;
}

/** A session at the beginning of an entry, for those of its items that are still to be played today. */
export function newSession(day: Day, entry: Entry, items: readonly ItemId[]): Session {
  const { key, kind, note, way, tempo: proposed, isMental } = entry;
  return {
    day,
    entry: { key, kind, note, way, items, ...(isMental ? { isMental } : {}) },
    at: 0,
    phase: 'playing',
    tempo: proposed,
    pedal: false,
    ratings: {},
  };
}
