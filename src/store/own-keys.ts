/**
 * What is kept about one student beside the log: the checkpoint, what is begun, what is wished for today. That of the
 * student who is shown lies under the plain keys, where opening reads it before it knows who that is. That of the others
 * is parked beside it until they are shown.
 */
import type { StudentId } from '../../shared/log/events';
import { CHECKPOINT, STUDENT } from './schema';
import type { ReadTransaction, WriteTransaction } from './transaction';

/** Runs that are begun and not yet in the log; read and written in src/day. */
export const SESSION = 'session';
/** What the person wants of this one day. */
export const WISHES = 'today';
/** An examination that has begun and is not yet in the log. */
export const EXAMINATION = 'examination';
/** The probes by which a student is placed today; read and written in src/day. */
export const PLACEMENT = 'placement';

export const CHECKPOINT_PIECES = {
  learner: `${CHECKPOINT}.learner`,
  lastRuns: `${CHECKPOINT}.last-runs`,
  work: `${CHECKPOINT}.work`,
} as const;

const OF_STUDENT: readonly string[] = [
  SESSION,
  WISHES,
  EXAMINATION,
  PLACEMENT,
  CHECKPOINT,
  ...Object.values(CHECKPOINT_PIECES),
];

/** Where a record of a student lies who is not shown. */
export const parkedKey = (key: string, student: StudentId): string => `${key} ${student}`;

/** The student who is shown, or null as long as there is none. */
export async function readShown(
  transaction: ReadTransaction | WriteTransaction,
): Promise<StudentId | null> {
  const shown = await transaction.objectStore('kept').get(STUDENT);
  return typeof shown === 'string' ? shown : null;
}

/** The key under which a record of a student lies now. What is not about one student has one place for all. */
export async function placeOf(
  transaction: ReadTransaction | WriteTransaction,
  key: string,
  student: StudentId | null,
): Promise<string> {
  if (student === null || !OF_STUDENT.includes(key)) return key;
  const shown = await readShown(transaction);
  return shown === null || shown === student ? key : parkedKey(key, student);
}

/** Shows another student: what is kept about the one before is parked, and what was parked about this one put back. */
export async function exchangeShown(
  transaction: WriteTransaction,
  student: StudentId,
): Promise<void> {
  const kept = transaction.objectStore('kept');
  const before = await readShown(transaction);
  if (before === student) return;
  const move = async (from: string, to: string) => {
    const value = await kept.get(from);
    if (value === undefined) return;
    await kept.put(value, to);
    await kept.delete(from);
  };
  for (const key of OF_STUDENT) {
    if (before !== null) await move(key, parkedKey(key, before));
    await move(parkedKey(key, student), key);
  }
  await kept.put(student, STUDENT);
}

/** Deletes what is parked about a student. */
export async function dropParked(transaction: WriteTransaction, student: StudentId): Promise<void> {
  const kept = transaction.objectStore('kept');
  await Promise.all(OF_STUDENT.map((key) => kept.delete(parkedKey(key, student))));
}
