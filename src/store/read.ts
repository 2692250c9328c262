/** Reading the log. */
import type { EventId, RunEvent, StudentId } from '../../shared/log/events';
import type { ItemId } from '../../shared/music/deck';
import { type Checkpoint, readCheckpoint } from './checkpoint';
import { placeOf, readShown } from './own-keys';
import { readRoster, type Roster } from './roster';
import type { LogDatabase, LogRecord } from './schema';
import { entryOf } from './timeline';
import { read, type ReadTransaction, type WriteTransaction } from './transaction';

/** Records that may be read in one go without holding up the page. */
export const BATCH = 1000;

/** Where the log stands. */
export interface Standing {
  /** The one who is shown; null as long as nothing has been recorded. */
  readonly student: StudentId | null;
  readonly roster: Roster;
  /** The highest sequence number; 0 for an empty log. */
  readonly sequence: number;
}

/** All ids of a student after one; '' is before all. */
export const after = (student: StudentId, id: EventId): IDBKeyRange =>
  IDBKeyRange.bound([student, id], [student, []], true);

export async function readStanding(
  transaction: ReadTransaction | WriteTransaction,
): Promise<Standing> {
  const [student, roster, last] = await Promise.all([
    readShown(transaction),
    readRoster(transaction),
    transaction.objectStore('events').openKeyCursor(null, 'prev'),
  ]);
  return { student, roster, sequence: last?.primaryKey ?? 0 };
}

export interface Opening extends Standing {
  readonly checkpoint: Checkpoint | null;
  /** What lies after the checkpoint, at most a batch; nothing without a checkpoint. */
  readonly records: readonly LogRecord[];
}

/** All that the first screen needs, in one short transaction. */
export const readOpening = (database: LogDatabase): Promise<Opening> =>
  read(database, async (transaction) => {
    const [standing, checkpoint] = await Promise.all([
      readStanding(transaction),
      readCheckpoint(transaction),
    ]);
    const { student } = standing;
    if (checkpoint === null || checkpoint.student !== student)
      return { ...standing, checkpoint: null, records: [] };
    const index = transaction.objectStore('events').index('replay');
    const records = await index.getAll(after(student, checkpoint.base.upTo), BATCH);
    return { ...standing, checkpoint, records };
  });

/** Where the log stands, and every correction in it. */
export const readCorrections = (database: LogDatabase) =>
  read(database, async (transaction) => {
    const standing = await readStanding(transaction);
    const corrections = await transaction.objectStore('events').index('voids').getAll();
    return { ...standing, corrections };
  });

/** The next events of a student in the order of their ids. */
export const readBatch = (database: LogDatabase, student: StudentId, from: EventId) =>
  read(database, (transaction) =>
    transaction.objectStore('events').index('replay').getAll(after(student, from), BATCH),
  );

/** What came into the log after a sequence number, at most a batch. */
export const readArrivals = (database: LogDatabase, sequence: number) =>
  read(database, async (transaction) => {
    const [standing, records] = await Promise.all([
      readStanding(transaction),
      transaction.objectStore('events').getAll(IDBKeyRange.lowerBound(sequence, true), BATCH),
    ]);
    return { ...standing, records };
  });

/** A small record about a student, or about the device. */
export const readKept = (database: LogDatabase, key: string, student: StudentId | null) =>
  read(database, async (transaction) =>
    transaction.objectStore('kept').get(await placeOf(transaction, key, student)),
  );

/** All runs of an item that no correction of the same student voids, oldest first. Null: the student who is shown. */
export const readRuns = (
  database: LogDatabase,
  item: ItemId,
  wanted: StudentId | null,
): Promise<readonly RunEvent[]> =>
  read(database, async (transaction) => {
    const student = wanted ?? (await readShown(transaction));
    if (student === null) return [];
    const events = transaction.objectStore('events');
    const range = IDBKeyRange.bound([student, item, ''], [student, item, []]);
    const records = await events.index('runs').getAll(range);
    const corrections = await Promise.all(
      records.map(({ id }) => events.index('voids').getAll(id)),
    );
    return records.flatMap((record, i): readonly RunEvent[] => {
      const isVoided = corrections[i]!.some((correction) => correction.student === student);
      const { decoded } = entryOf(record);
      const isRun = decoded.outcome === 'ok' && decoded.event.kind === 'run';
      return isRun && !isVoided ? [decoded.event as RunEvent] : [];
    });
  });
