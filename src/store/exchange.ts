/** Backup and restore. Loaded only when it is asked for. */
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
import type { Day, EventId } from '../../shared/log/events';
import { dropCheckpointOver } from './checkpoint';
import { StoreError } from './errors';
import type { Connection } from './open';
import { readArrived, readStanding } from './read';
import { LAST_BACKUP, type LogDatabase, type LogRecord, recordOf, STUDENT } from './schema';
import { read, write, type WriteTransaction } from './transaction';

/** All records that the log has now, in batches: each a task of its own, so that the page stays alive. */
async function* batchesOf(database: LogDatabase): AsyncGenerator<readonly LogRecord[]> {
  const { sequence } = await read(database, readStanding);
  let from = 0;
  while (from < sequence) {
    const records = await readArrived(database, from, sequence);
    if (records.length === 0) return;
    yield records;
    from = records.at(-1)!.sequence;
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

/** Reads a file piece by piece. Throws a BackupError. */
async function decodeFile(file: Blob) {
  checkSize(file.size);
  const reader = new BackupReader();
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const decode = (bytes?: Uint8Array) => {
    try {
      return decoder.decode(bytes, { stream: bytes !== undefined });
    } catch {
      throw new BackupError('This file is no text, so it is no Arpeggiary backup.');
    }
  };
  const pieces = file.stream().getReader();
  for (;;) {
    const piece = await pieces.read();
    if (piece.done) break;
    reader.push(decode(piece.value));
  }
  reader.push(decode());
  return reader.end();
}

/** What a restore of this file would do. Rejects with a BackupError or a StoreError. */
export async function readBackup(connection: Connection, file: Blob): Promise<BackupPreview> {
  const backup = await decodeFile(file);
  if (backup.students.size > 1) {
    throw new BackupError('This backup holds several students, which this version cannot restore.');
  }
  return connection.run(async (database) => {
    const { student } = await read(database, readStanding);
    const isOther = student !== null && backup.students.size > 0 && !backup.students.has(student);
    if (isOther) throw new StoreError('other-student');
    const here = new Set<EventId>();
    for await (const records of batchesOf(database)) for (const { id } of records) here.add(id);
    return previewOf(backup, here);
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
  const known = await Promise.all(entries.map(({ id }) => store.index('id').getKey(id)));
  const records = entries
    .filter((_, i) => known[i] === undefined)
    .map((entry, i) => recordOf(entry, from + 1 + i));
  // Async, so that an add that throws at once does not leave the others without anybody to tell.
  await Promise.all(records.map(async (record) => store.add(record)));
  await dropCheckpointOver(
    transaction,
    records.flatMap(({ id, voids = [] }) => [id, ...voids]),
  );
  return from + records.length;
}

/** Adds what the log lacks in one transaction. An empty log takes over the student of the backup. */
export function restore(connection: Connection, { fresh }: BackupPreview): Promise<void> {
  const entries = fresh.toSorted((a, b) => (a.id < b.id ? -1 : 1));
  return connection.run((database) =>
    write(database, async (transaction) => {
      const standing = await readStanding(transaction);
      let { student, sequence } = standing;
      const other = entries.find((entry) => entry.student !== student);
      if (other && sequence === 0) {
        await transaction.objectStore('kept').put(other.student, STUDENT);
      } else if (other) throw new StoreError('other-student');
      for (let i = 0; i < entries.length; i += PORTION) {
        sequence = await add(transaction, entries.slice(i, i + PORTION), sequence);
      }
    }),
  );
}
