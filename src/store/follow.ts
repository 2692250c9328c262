/** Following the log: reading it into a timeline, from the checkpoint or the beginning, and catching up with it. */
import type { Day, EventId, StudentId } from '../../shared/log/events';
import { writeCheckpoint } from './checkpoint';
import {
  BATCH,
  readArrivals,
  readBatch,
  readCorrections,
  readOpening,
  type Standing,
} from './read';
import type { LogDatabase } from './schema';
import { entryOf, Timeline } from './timeline';
import { write } from './transaction';

/** How far the log has been read. */
export interface Position extends Standing {
  readonly timeline: Timeline;
  /** Up to where there is a checkpoint; '' without one. */
  readonly keptUpTo: EventId;
}

export const emptyLog = (): Position => ({
  student: null,
  sequence: 0,
  timeline: new Timeline(),
  keptUpTo: '',
});

async function readAll(
  database: LogDatabase,
  { student, sequence }: { readonly student: StudentId; readonly sequence: number },
  timeline: Timeline,
  { today, onLong }: Reading,
): Promise<void> {
  let from = '';
  for (;;) {
    // Each batch is a task of its own, so that the page stays alive.
    const records = await readBatch(database, student, from);
    // What came in since the corrections were read is left to catchUp.
    timeline.add(records.filter((record) => record.sequence <= sequence).map(entryOf), today);
    const last = records.at(-1);
    if (last === undefined || records.length < BATCH) return;
    from = last.id;
    onLong();
  }
}

export interface Reading {
  readonly today: Day;
  /** Called when it takes more than a moment. */
  onLong(): void;
}

/** Reads the whole log anew. */
export async function rebuild(database: LogDatabase, reading: Reading): Promise<Position> {
  const { student, sequence, corrections } = await readCorrections(database);
  const timeline = new Timeline();
  if (student !== null) {
    const own = corrections.filter((record) => record.student === student);
    timeline.hear(own.map(entryOf));
    await readAll(database, { student, sequence }, timeline, reading);
  }
  return { student, sequence, timeline, keptUpTo: '' };
}

/** Reads the log from its checkpoint if there is one that can be used. */
export async function openLog(database: LogDatabase, reading: Reading): Promise<Position> {
  const { student, sequence, checkpoint, records } = await readOpening(database);
  if (checkpoint === null) return rebuild(database, reading);
  const timeline = new Timeline(checkpoint.base);
  const isUsable = timeline.canStandOn(reading.today) && records.length < BATCH;
  if (!isUsable) return rebuild(database, reading);
  timeline.add(records.map(entryOf), reading.today);
  return { student, sequence, timeline, keptUpTo: checkpoint.base.upTo };
}

/**
 * Adds what came into the log since, from this window or another, to the timeline of a position. Null if it lies before
 * what has been folded, or is too much: then the log must be read anew.
 */
export async function catchUp(
  database: LogDatabase,
  position: Position,
  today: Day,
): Promise<Position | null> {
  const { student, sequence, records } = await readArrivals(database, position.sequence);
  const isSameLog =
    sequence >= position.sequence && (position.student === null || position.student === student);
  if (!isSameLog || records.length === BATCH) return null;
  if (sequence === position.sequence) return position;
  const entries = records.filter((record) => record.student === student).map(entryOf);
  if (!position.timeline.canTake(entries)) return null;
  position.timeline.add(entries, today);
  return { ...position, student, sequence };
}

export const isCheckpointDue = ({ timeline, keptUpTo }: Position): boolean =>
  timeline.folded.upTo !== keptUpTo;

/** Keeps the fold as the checkpoint, unless something has come in that it may lack. */
export const keepCheckpoint = (database: LogDatabase, position: Position): Promise<Position> =>
  write(database, async (transaction) => {
    const { student, timeline } = position;
    const last = await transaction.objectStore('events').openKeyCursor(null, 'prev');
    if (student === null || last?.primaryKey !== position.sequence) return position;
    await writeCheckpoint(transaction, { student, base: timeline.folded });
    return { ...position, keptUpTo: timeline.folded.upTo };
  });
