/** Files of the log: the backup of the device, the file of a student, and taking either in. Loaded when asked for. */
import {
  BACKUP_MIME,
  type BackupEntry,
  BackupError,
  type BackupPreview,
  eventLines,
  headerLine,
  previewOf,
} from '../../shared/formats/backup';
import { BackupReader, checkSize } from '../../shared/formats/backup-reader';
import { decodeKept, goesBefore, type Outcome } from '../../shared/formats/kept';
import type { Day, EventId, StudentId } from '../../shared/log/events';
import { dropCheckpointOver } from './checkpoint';
import { noteTakenIn } from './hand-over';
import type { Connection } from './open';
import { readShown } from './own-keys';
import { BATCH, readArrivals, readBatch, readStanding } from './read';
import { named, newlyListed, readRoster, type Roster, writeRoster } from './roster';
import { LAST_BACKUP, type LogDatabase, type LogRecord, recordOf, STUDENT } from './schema';
import { read, write, type WriteTransaction } from './transaction';

type Batches = AsyncGenerator<readonly LogRecord[]>;

/**
 * All records of the log, in batches: each a task of its own, so that the page stays alive. What is mended meanwhile comes
 * again, whole.
 */
async function* batchesOf(database: LogDatabase): Batches {
  let from = 0;
  for (;;) {
    const { records } = await readArrivals(database, from);
    if (records.length > 0) yield records;
    if (records.length < BATCH) return;
    from = records.at(-1)!.sequence;
  }
}

/** Those of one student, in the order of their ids. */
async function* batchesOfStudent(database: LogDatabase, student: StudentId): Batches {
  let from = '';
  for (;;) {
    const records = await readBatch(database, student, from);
    if (records.length > 0) yield records;
    if (records.length < BATCH) return;
    from = records.at(-1)!.id;
  }
}

/** The whole log as a file, also what can't be read. `made` in milliseconds since 1970 UTC. */
export function writeBackup(
  connection: Connection,
  made: number,
  dayOf: (at: number) => Day,
): Promise<Blob> {
  return connection.run(async (database) => {
    const parts: string[] = [];
    let count = 0;
    for await (const records of batchesOf(database)) {
      parts.push(eventLines(records));
      count += records.length;
    }
    await database.put('kept', dayOf(made), LAST_BACKUP);
    return new Blob([headerLine(made, count), ...parts], { type: BACKUP_MIME });
  });
}

/** How far a student's record has been handed over. */
export interface Mark {
  /** The highest number of an event that was in the file, and the event. */
  readonly sequence: number;
  readonly event: EventId;
}

export interface StudentFile {
  readonly file: Blob;
  readonly events: number;
  /** To be noted when the file has been handed over; null for a file without events. */
  readonly mark: Mark | null;
}

/** The record of a student as a file: all of it, or what has come in since a mark. */
export function writeStudentFile(
  connection: Connection,
  student: StudentId,
  { made, since }: { readonly made: number; readonly since: Mark | null },
): Promise<StudentFile> {
  return connection.run(async (database) => {
    const parts: string[] = [];
    let events = 0;
    let mark: Mark | null = null;
    for await (const records of batchesOfStudent(database, student)) {
      const fresh = records.filter(({ sequence }) => sequence > (since?.sequence ?? 0));
      parts.push(eventLines(fresh));
      events += fresh.length;
      for (const { sequence, id } of fresh) {
        if (mark === null || sequence > mark.sequence) mark = { sequence, event: id };
      }
    }
    const header = headerLine(made, events, since?.event);
    return { file: new Blob([header, ...parts], { type: BACKUP_MIME }), events, mark };
  });
}

/** Bytes that are decoded in one go: some 250 runs, a few milliseconds. */
const PIECE = 64 * 1024;

/** Reads a file piece by piece, each a task of its own. Throws a BackupError. */
async function decodeFile(file: Blob) {
  checkSize(file.size);
  const reader = new BackupReader();
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const decode = (bytes?: ArrayBuffer) => {
    try {
      return decoder.decode(bytes, { stream: bytes !== undefined });
    } catch {
      throw new BackupError('This file is no text, so it is no Arpeggiary file.');
    }
  };
  for (let at = 0; at < file.size; at += PIECE) {
    reader.push(decode(await file.slice(at, at + PIECE).arrayBuffer()));
  }
  reader.push(decode());
  return reader.end();
}

/** The students of the device by name; the one who is shown is in no roster as long as there is nobody else. */
const namesOf = (shown: StudentId | null, roster: Roster): Map<StudentId, string | null> =>
  new Map([
    ...(shown === null ? [] : [[shown, null] as const]),
    ...roster.map(({ id, name }) => [id, name] as const),
  ]);

/** What taking this file in would do. Rejects with a BackupError or a StoreError. */
export async function readBackup(connection: Connection, file: Blob): Promise<BackupPreview> {
  const backup = await decodeFile(file);
  return connection.run(async (database) => {
    const { student: shown, roster } = await read(database, readStanding);
    const inFile = new Set(backup.entries.map(({ id }) => id));
    const events = new Map<EventId, Outcome>();
    const hear = (record: LogRecord) => events.set(record.id, decodeKept(record).outcome);
    for (const student of new Set(backup.entries.map((entry) => entry.student))) {
      for await (const records of batchesOfStudent(database, student)) {
        records.filter(({ id }) => inFile.has(id)).forEach(hear);
      }
    }
    // A file without anything new says nothing of whose it is.
    const { after } = backup;
    const last = after === null ? undefined : await database.getFromIndex('events', 'id', after);
    if (last !== undefined) hear(last);
    return previewOf(backup, { events, names: namesOf(shown, roster) });
  });
}

/** Entries that are added before the transaction gives the page a moment. */
const PORTION = 250;

async function add(
  transaction: WriteTransaction,
  entries: readonly BackupEntry[],
  from: number,
): Promise<number> {
  const store = transaction.objectStore('events');
  const here = await Promise.all(entries.map(({ id }) => store.index('id').get(id)));
  const taken = entries.flatMap((entry, i) => {
    const record = here[i];
    const isTaken = goesBefore(entry.decoded.outcome, record && decodeKept(record).outcome);
    return isTaken ? [{ entry, record }] : [];
  });
  const mended = taken.flatMap(({ record }) => record ?? []);
  const records = taken.map(({ entry }, i) => recordOf(entry, from + 1 + i));
  // A whole copy arrives as what is new does, so that other windows and the next hand-over see it.
  await Promise.all(mended.map(async ({ sequence }) => store.delete(sequence)));
  // Async, so that an add that throws at once does not leave the others without anybody to tell.
  await Promise.all(records.map(async (record) => store.add(record)));
  const changed = [...mended, ...records];
  for (const student of new Set(changed.map((record) => record.student))) {
    const own = changed.filter((record) => record.student === student);
    const ids = own.flatMap(({ id, voids = [] }) => [id, ...voids]);
    await dropCheckpointOver(transaction, student, ids);
  }
  return from + records.length;
}

/** Takes students in who are new here. On a device without any, the first one of the file is shown. */
async function welcome(
  transaction: WriteTransaction,
  entries: readonly BackupEntry[],
): Promise<void> {
  const students = [...new Set(entries.map(({ student }) => student))];
  let shown = await readShown(transaction);
  if (shown === null && students[0] !== undefined) {
    shown = students[0];
    await transaction.objectStore('kept').put(shown, STUDENT);
  }
  const roster = await readRoster(transaction);
  const here = namesOf(shown, roster);
  const added = students.filter((student) => !here.has(student));
  const all = roster.length > 0 || shown === null ? roster : [newlyListed(shown)];
  const events = entries.flatMap(({ decoded }) =>
    decoded.outcome === 'ok' ? [decoded.event] : [],
  );
  const next = named([...all, ...added.map(newlyListed)], events);
  if (next.length > 1) await writeRoster(transaction, next);
}

/** Adds what the log lacks, and mends what it has damaged, in one transaction. */
export function restore(connection: Connection, preview: BackupPreview): Promise<void> {
  const { fresh, made, students } = preview;
  const entries = fresh.toSorted((a, b) => (a.id < b.id ? -1 : 1));
  return connection.run((database) =>
    write(database, async (transaction) => {
      await welcome(transaction, entries);
      let { sequence } = await readStanding(transaction);
      for (let i = 0; i < entries.length; i += PORTION) {
        sequence = await add(transaction, entries.slice(i, i + PORTION), sequence);
      }
      const ids = students.map(({ student }) => student);
      await noteTakenIn(transaction, ids, Date.parse(made));
    }),
  );
}
