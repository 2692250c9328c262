/** Following the log: reading it into a timeline, from the checkpoint or the beginning, and catching up with it. */
import type { Day, EventId, StudentId } from '../../shared/log/events';
import { writeCheckpoint } from './checkpoint';
import {
  BATCH,
  readArrivals,
  readBatch,
  readCorrections,
  readOpening,
  readStanding,
  type Standing,
} from './read';
import type { Listed, Roster } from './roster';
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
  roster: [],
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

/** Reads the whole log anew: of the student who is shown, or of another. */
export async function rebuild(
  database: LogDatabase,
  reading: Reading,
  wanted: StudentId | null = null,
): Promise<Position> {
  const { student: shown, roster, sequence, corrections } = await readCorrections(database);
  const student = wanted ?? shown;
  const timeline = new Timeline();
  if (student !== null) {
    const own = corrections.filter((record) => record.student === student);
    timeline.hear(own.map(entryOf));
    await readAll(database, { student, sequence }, timeline, reading);
  }
  return { student, roster, sequence, timeline, keptUpTo: '' };
}

/** Reads the log, from its checkpoint if there is one that can be used. */
export async function openLog(database: LogDatabase, reading: Reading): Promise<Position> {
  const { checkpoint, records, ...standing } = await readOpening(database);
  if (checkpoint === null) return rebuild(database, reading);
  const timeline = new Timeline(checkpoint.base);
  const isUsable = timeline.canStandOn(reading.today) && records.length < BATCH;
  if (!isUsable) return rebuild(database, reading);
  timeline.add(records.map(entryOf), reading.today);
  return { ...standing, timeline, keptUpTo: checkpoint.base.upTo };
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
  const { records, ...standing } = await readArrivals(database, position.sequence);
  const { student, sequence, roster } = standing;
  const isSameLog =
    sequence >= position.sequence && (position.student === null || position.student === student);
  if (!isSameLog || records.length === BATCH) return null;
  if (sequence === position.sequence) {
    return areSame(roster, position.roster) ? position : { ...position, roster };
  }
  const entries = records.filter((record) => record.student === student).map(entryOf);
  if (!position.timeline.canTake(entries)) return null;
  position.timeline.add(entries, today);
  return { ...position, ...standing };
}

const areSame = (one: Roster, other: Roster): boolean =>
  one.length === other.length && one.every((listed, i) => isEqual(listed, other[i]!));

const isEqual = (one: Listed, other: Listed): boolean =>
  one.id === other.id && one.name === other.name && one.isArchived === other.isArchived;

export const isCheckpointDue = ({ timeline, keptUpTo }: Position): boolean =>
  timeline.folded.upTo !== keptUpTo;

/** Keeps the fold as the checkpoint, unless something has come in that it may lack. */
export const keepCheckpoint = (database: LogDatabase, position: Position): Promise<Position> =>
  write(database, async (transaction) => {
    const { student, timeline } = position;
    const standing = await readStanding(transaction);
    const isInStep = standing.student === student && standing.sequence === position.sequence;
    if (student === null || !isInStep) return position;
    await writeCheckpoint(transaction, { student, base: timeline.folded });
    return { ...position, keptUpTo: timeline.folded.upTo };
  });
