/** The store: the log on this device and what is derived from it. All that screens know of storage. */
import { effect, type ReadonlySignal, signal } from '@preact/signals';
import { deleteDB } from 'idb';
import type { BackupPreview } from '../../shared/formats/backup';
import type { Day, EventBody, LogEvent, RunEvent, StudentId } from '../../shared/log/events';
import type { ItemId } from '../../shared/music/deck';
import { appending } from './append';
import { storeErrorOf } from './errors';
import type { Mark, StudentFile } from './exchange';
import type { HandOver } from './hand-over';
import { connect } from './open';
import { placeOf } from './own-keys';
import { readKept, readRuns } from './read';
import { OWN_PREFIX } from './schema';
import { followLog, type StateSignals } from './state';
import type { StudioAsk } from './studio';
import { note } from './transaction';

export { StoreError, type StoreErrorKind } from './errors';
export type { StoreStatus } from './state';
export type { Mark, StudentFile } from './exchange';
export type { HandOver } from './hand-over';
export type { Listed } from './roster';
export type { Overview } from './studio';
export type { UnreadEvent } from './timeline';

/** The record of one student. */
export interface Store extends Omit<StateSignals, 'problem' | 'shown' | 'listed'> {
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
  /** Adds what the log lacks and mends what it has damaged, all or nothing; doing it twice changes nothing. */
  restore(preview: BackupPreview): Promise<void>;
  /**
   * Keeps a small record of this device (a draft, preferences); it is in no backup. Undefined deletes it. What is begun
   * and wished for today is kept for each student.
   */
  keep(key: string, value: unknown): Promise<void>;
  kept(key: string): Promise<unknown>;
  /** Deletes the whole database. */
  wipe(): Promise<void>;
  close(): void;
}

/** Who is on this device, and who of them is shown: in all windows the same. */
export interface Students {
  readonly listed: StateSignals['listed'];
  readonly shown: StateSignals['shown'];
  /** Also takes a student back who was archived. */
  show(student: StudentId): Promise<void>;
  /** Adds a student and shows it. */
  add(name: string): Promise<void>;
  rename(student: StudentId, name: string): Promise<void>;
  /** An archived student stays on the device, out of the way. */
  archive(student: StudentId, isArchived: boolean): Promise<void>;
  /** Deletes the student's record from this device. Not for the only one. */
  remove(student: StudentId): Promise<void>;
  /** The record of a student as a file: all of it, or what has come in since a mark. */
  fileOf(student: StudentId, since: Mark | null): Promise<StudentFile>;
  /** To whom the record of a student has been handed over, the last one first. */
  handOvers(student: StudentId): Promise<readonly HandOver[]>;
  /** Notes that a file with this mark has been handed to somebody. */
  noteHandOver(student: StudentId, receiver: string, mark: Mark): Promise<void>;
  /** Tells how some students stand, one after the other. Rejects with a StoreError. */
  overlook(ask: StudioAsk): Promise<void>;
}

/** Takes files in, by a thread where there are threads. */
const intake = async () =>
  'Worker' in globalThis ? import('./exchange-thread') : import('./exchange');

/** Reads how all students stand, likewise. */
const studio = async () =>
  'Worker' in globalThis ? import('./studio-thread') : import('./studio');

/** All that is on the device; as a store it is that of the student who is shown at first. */
export interface Device extends Store, Pick<StateSignals, 'problem'> {
  readonly students: Students;
  /**
   * The store of the student who is shown: another one for each, so that what a screen records after another student has
   * been shown still goes to the student whom the screen is about.
   */
  readonly current: ReadonlySignal<Store>;
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

export function openStore({ name, now, dayOf }: StoreOptions): Device {
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

  const { shown, listed, problem, ...signals } = state.signals;

  const recordFor = async (student: StudentId | null, bodies: readonly EventBody[]) => {
    if (bodies.length === 0) return [];
    const at = now();
    followDay();
    const events = await connection.run(appending(bodies, { at, day: dayOf(at), student }));
    await changed();
    return events;
  };

  /** Of a student, or of the first one that is shown. */
  interface Owner {
    student: StudentId | null;
  }

  const storeOf = (owner: Owner): Store => ({
    ...signals,
    record: (bodies) => recordFor(owner.student, bodies),
    runsOf: (item) => connection.run((database) => readRuns(database, item, owner.student)),
    backup: async () => (await import('./exchange')).writeBackup(connection, now(), dayOf),
    previewBackup: async (file) => (await intake()).readBackup(connection, file, name),
    restore: async (preview) => {
      await (await intake()).restore(connection, preview);
      await changed();
    },
    keep: async (key, value) => {
      checkKey(key);
      await connection.run((database) =>
        note(database, async (transaction) => {
          const kept = transaction.objectStore('kept');
          const place = await placeOf(transaction, key, owner.student);
          if (value === undefined) await kept.delete(place);
          else await kept.put(value, place);
        }),
      );
    },
    kept: async (key) => {
      checkKey(key);
      return connection.run((database) => readKept(database, key, owner.student));
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
      stopFollowing();
      clearInterval(minutes);
      document.removeEventListener('visibilitychange', onVisible);
      windows.close();
      state.close();
      connection.close();
    },
  });

  let owner: Owner = { student: null };
  const first = storeOf(owner);
  const current = signal(first);
  const stopFollowing = effect(() => {
    const student = shown.value;
    if (owner.student === null) owner.student = student;
    else if (owner.student !== student) {
      owner = { student };
      current.value = storeOf(owner);
    }
  });

  const leaving = () => {
    const [id, { name: known, lastEvent }] = [shown.peek(), signals.student.peek()];
    return id === null ? null : { id, name: known, namedUpTo: lastEvent ?? '' };
  };
  const changing = async (work: (students: typeof import('./students')) => Promise<void>) => {
    await work(await import('./students'));
    await changed();
  };

  return {
    ...first,
    problem,
    current,
    students: {
      shown,
      listed,
      show: (id) => changing(({ showStudent }) => showStudent(connection, id, leaving())),
      add: async (given) => {
        const { addStudent } = await import('./students');
        await recordFor(await addStudent(connection, leaving()), [{ kind: 'name', name: given }]);
      },
      rename: async (id, given) => void (await recordFor(id, [{ kind: 'name', name: given }])),
      archive: (id, isArchived) =>
        changing(({ archiveStudent }) => archiveStudent(connection, id, isArchived)),
      remove: (id) => changing(({ removeStudent }) => removeStudent(connection, id)),
      fileOf: async (id, since) =>
        (await import('./exchange')).writeStudentFile(connection, id, { made: now(), since }),
      handOvers: async (id) => (await import('./hand-over')).handOversOf(connection, id),
      noteHandOver: async (id, receiver, mark) => {
        const made = { student: id, receiver, mark, day: dayOf(now()) };
        await (await import('./hand-over')).noteHandOver(connection, made);
      },
      overlook: async (ask) => (await studio()).readStudio(connection, ask, name),
    },
  };
}
