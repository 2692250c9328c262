/**
 * The checkpoint: the fold of the log up to some event, kept so that opening need not read what lies before. It is
 * derived, so it may be deleted at any time; whoever adds something before its end must delete it.
 *
 * It is kept in pieces, and its long tables by columns: Chromium puts a value of more than 64 KiB into a file of its
 * own, which costs every start another way through its processes.
 */
import { EVENT_VERSION, type EventId, type StudentId } from '../../shared/log/events';
import type { Learner } from '../../shared/learning/learner';
import { type Student, STUDENT_VERSION } from '../../shared/planning/student';
import {
  type PackedLastRuns,
  type PackedWork,
  packLastRuns,
  packWork,
  unpackLastRuns,
  unpackWork,
} from './packed';
import { CHECKPOINT_PIECES, parkedKey, placeOf } from './own-keys';
import { CHECKPOINT } from './schema';
import type { Base } from './timeline';
import type { ReadTransaction, WriteTransaction } from './transaction';

export interface Checkpoint {
  readonly student: StudentId;
  readonly base: Base;
}

/** The first piece, which says whether the others can be used. */
interface Head {
  readonly version: string;
  readonly student: StudentId;
  readonly upTo: EventId;
  readonly unread: Base['unread'];
  readonly state: Omit<Student, 'learner' | 'lastRuns' | 'work'>;
}

const { learner: LEARNER, lastRuns: LAST_RUNS, work: WORK } = CHECKPOINT_PIECES;

/** Raise it when the pieces change. */
const PIECES_VERSION = 2;
/** A change of the events that can be read changes the fold as much as one of the model does. */
const VERSION = `${PIECES_VERSION}.${STUDENT_VERSION}.${EVENT_VERSION}`;

const placed = (key: string, parked: StudentId | null): string =>
  parked === null ? key : parkedKey(key, parked);

/**
 * The checkpoint of the student who is shown, or the parked one of another, if it is one of this version of the app. Whose
 * it is must be asked of the checkpoint.
 */
export async function readCheckpoint(
  transaction: ReadTransaction,
  parked: StudentId | null = null,
): Promise<Checkpoint | null> {
  const kept = transaction.objectStore('kept');
  const [head, ...tables] = await Promise.all([
    kept.get(placed(CHECKPOINT, parked)) as Promise<Head | undefined>,
    ...[LEARNER, LAST_RUNS, WORK].map((key) => kept.get(placed(key, parked))),
  ]);
  if (head?.version !== VERSION) return null;
  const [learner, lastRuns, work] = tables as [Learner, PackedLastRuns, PackedWork];
  const { student, upTo, unread } = head;
  const state: Student = {
    ...head.state,
    learner,
    lastRuns: unpackLastRuns(lastRuns),
    work: unpackWork(work),
  };
  return { student, base: { state, upTo, unread } };
}

/** Keeps it for the student who is shown, or parks it for another. */
export async function writeCheckpoint(
  transaction: WriteTransaction,
  { student, base }: Checkpoint,
  isParked = false,
): Promise<void> {
  const { state, upTo, unread } = base;
  const { learner, lastRuns, work, ...rest } = state;
  const head: Head = { version: VERSION, student, upTo, unread, state: rest };
  const put = (value: unknown, key: string) =>
    transaction.objectStore('kept').put(value, placed(key, isParked ? student : null));
  await Promise.all([
    put(head, CHECKPOINT),
    put(learner, LEARNER),
    put(packLastRuns(lastRuns), LAST_RUNS),
    put(packWork(work), WORK),
  ]);
}

/** Deletes the checkpoint of a student if one of these ids lies within it. */
export async function dropCheckpointOver(
  transaction: WriteTransaction,
  student: StudentId,
  ids: readonly EventId[],
): Promise<void> {
  if (ids.length === 0) return;
  const kept = transaction.objectStore('kept');
  const place = await placeOf(transaction, CHECKPOINT, student);
  const head = (await kept.get(place)) as Head | undefined;
  if (head && ids.some((id) => id <= head.upTo)) await kept.delete(place);
}
