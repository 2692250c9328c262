/** The database: an append-only log of events, and small records that are kept beside it. */
import type { DBSchema, IDBPDatabase } from 'idb';
import type { EventId, StudentId } from '../../shared/log/events';
import { decodeKept, type KeptEvent } from '../../shared/formats/kept';
import type { ItemId } from '../../shared/music/deck';

export interface LogRecord extends KeptEvent {
  /** 1, 2, 3 … in the order in which events came into this database. */
  readonly sequence: number;
  /** Of a run. */
  readonly item?: ItemId;
  /** Of a correction: the events that it voids. */
  readonly voids?: readonly EventId[];
}

export interface LogSchema extends DBSchema {
  events: {
    key: number;
    value: LogRecord;
    indexes: {
      id: EventId;
      replay: [StudentId, EventId];
      runs: [StudentId, ItemId, EventId];
      voids: EventId;
    };
  };
  kept: { key: string; value: unknown };
}

export type LogDatabase = IDBPDatabase<LogSchema>;

/**
 * Raise it with the stores and indexes. Raise it with EVENT_VERSION too, and index anew in `upgrade`: an event that was
 * set aside as newer had no `item` or `voids` while it could not be read.
 */
export const SCHEMA_VERSION = 1;

/** From any older version to this one, step by step. */
export function upgrade(database: LogDatabase, oldVersion: number): void {
  if (oldVersion < 1) {
    const events = database.createObjectStore('events', { keyPath: 'sequence' });
    events.createIndex('id', 'id', { unique: true });
    events.createIndex('replay', ['student', 'id']);
    events.createIndex('runs', ['student', 'item', 'id']);
    events.createIndex('voids', 'voids', { multiEntry: true });
    database.createObjectStore('kept');
  }
}

/** Our own keys in `kept`; those of the screens must not begin with "log.". */
export const OWN_PREFIX = 'log.';
export const DEVICE = 'log.device';
/** The student who is shown. */
export const STUDENT = 'log.student';
/** All students of this device; missing as long as there is only one. */
export const ROSTER = 'log.students';
export const CHECKPOINT = 'log.checkpoint';
export const HANDED_OVER = 'log.handed-over';
export const TAKEN_IN = 'log.taken-in';

/** The day of the last backup; screens may read it. */
export const LAST_BACKUP = 'last-backup';

/** A record with what the indexes need of its event. */
export function recordOf(kept: KeptEvent, sequence: number): LogRecord {
  const { id, student, event } = kept;
  const record = { sequence, id, student, event };
  const decoded = decodeKept(kept);
  if (decoded.outcome !== 'ok') return record;
  if (decoded.event.kind === 'run') return { ...record, item: decoded.event.item };
  if (decoded.event.kind === 'void') return { ...record, voids: decoded.event.events };
  return record;
}
