/** The store: the log on this device and what is derived from it. All that screens know of storage. */
import { deleteDB } from 'idb';
import type { BackupPreview } from '../../shared/formats/backup';
import type { Day, EventBody, LogEvent, RunEvent } from '../../shared/log/events';
import type { ItemId } from '../../shared/music/deck';
import { appending } from './append';
import { storeErrorOf } from './errors';
import { connect } from './open';
import { readRuns } from './read';
import { OWN_PREFIX } from './schema';
import { followLog, type StateSignals } from './state';

export { StoreError, type StoreErrorKind } from './errors';
export type { StoreStatus } from './state';
export type { UnreadEvent } from './timeline';

export interface Store extends Omit<StateSignals, 'problem'> {
  /**
   * Records what a person did, all or none, and resolves when it is on the device and the signals show it. Rejects with
   * a StoreError, and then nothing is recorded. Undo is `record([{ kind: 'void', events: ids }])`.
   */
  record(bodies: readonly EventBody[]): Promise<readonly LogEvent[]>;
  /** All runs of an item that were not voided, oldest first. */
  runsOf(item: ItemId): Promise<readonly RunEvent[]>;
  /** The whole log as a file. */
  backup(): Promise<Blob>;
  /** What a restore would do. Rejects with a BackupError or a StoreError whose message is for the person. */
  previewBackup(file: File): Promise<BackupPreview>;
  /** Adds what the log lacks, all or nothing; doing it twice changes nothing. */
  restore(preview: BackupPreview): Promise<void>;
  /** Keeps a small record of this device (a draft, preferences); it is in no backup. Undefined deletes it. */
  keep(key: string, value: unknown): Promise<void>;
  kept(key: string): Promise<unknown>;
  /** Deletes the whole database. */
  wipe(): Promise<void>;
  close(): void;
}

export interface StoreOptions {
  /** Of the database. */
  readonly name: string;
  /** Milliseconds since 1970 UTC. */
  now(): number;
  /** The calendar day of a moment, where the person is. */
  dayOf(at: number): Day;
}

const MINUTE = 60_000;

function checkKey(key: string): void {
  if (key.startsWith(OWN_PREFIX)) throw new RangeError(`the store's own key: ${key}`);
}

export function openStore({ name, now, dayOf }: StoreOptions): Store & StateSignals {
  const connection = connect(name, {
    outdated: () => state.outdated(),
    blocked: (isBlocked) => state.blocked(isBlocked),
    deleted: () => void state.reset(),
  });
  const state = followLog(connection, () => dayOf(now()));

  // Other windows read the log themselves; the message only says when.
  const windows = new BroadcastChannel(`${name}-log`);
  windows.addEventListener('message', () => void state.sync());

  const followDay = () => void state.followDay();
  const onVisible = () => {
    if (document.visibilityState === 'hidden') return;
    followDay();
    void state.sync();
  };
  document.addEventListener('visibilitychange', onVisible);
  const minutes = setInterval(followDay, MINUTE);

  let isClosed = false;
  void state.sync();

  const changed = async () => {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a channel has no target
    if (!isClosed) windows.postMessage(null);
    await state.sync();
  };

  return {
    ...state.signals,
    record: async (bodies) => {
      if (bodies.length === 0) return [];
      const at = now();
      followDay();
      const events = await connection.run(appending(bodies, { at, day: dayOf(at) }));
      await changed();
      return events;
    },
    runsOf: (item) => connection.run((database) => readRuns(database, item)),
    backup: async () => (await import('./exchange')).writeBackup(connection, now(), dayOf),
    previewBackup: async (file) => (await import('./exchange')).readBackup(connection, file),
    restore: async (preview) => {
      await (await import('./exchange')).restore(connection, preview);
      await changed();
    },
    keep: async (key, value) => {
      checkKey(key);
      await connection.run(async (database) => {
        if (value === undefined) await database.delete('kept', key);
        else await database.put('kept', value, key);
      });
    },
    kept: async (key) => {
      checkKey(key);
      return connection.run((database) => database.get('kept', key));
    },
    wipe: async () => {
      connection.close();
      await deleteDB(name).catch((error: unknown) => {
        throw storeErrorOf(error);
      });
      await state.reset();
    },
    close: () => {
      isClosed = true;
      clearInterval(minutes);
      document.removeEventListener('visibilitychange', onVisible);
      windows.close();
      state.close();
      connection.close();
    },
  };
}
