/**
 * The checkpoint: the fold of the log up to some event, kept so that opening need not read what lies before. It is
 * derived, so it may be deleted at any time; whoever adds something before its end must delete it.
 */
import { EVENT_VERSION, type EventId, type StudentId } from '../../shared/log/events';
import { STUDENT_VERSION } from '../../shared/planning/student';
import { CHECKPOINT } from './schema';
import type { Base } from './timeline';
import type { WriteTransaction } from './transaction';

export interface Checkpoint {
  readonly version: string;
  readonly student: StudentId;
  readonly base: Base;
}

/** A change of the events that can be read changes the fold as much as one of the model does. */
const VERSION = `${STUDENT_VERSION}.${EVENT_VERSION}`;

export const checkpointOf = (student: StudentId, base: Base): Checkpoint => ({
  version: VERSION,
  student,
  base,
});

/** The checkpoint that was kept, if it is one of this version of the app and of this student. */
export function usableCheckpoint(kept: unknown, student: StudentId): Checkpoint | null {
  const checkpoint = kept as Checkpoint | undefined;
  return checkpoint?.version === VERSION && checkpoint.student === student ? checkpoint : null;
}

/** Deletes the checkpoint if one of these ids lies within it. */
export async function dropCheckpointOver(
  transaction: WriteTransaction,
  ids: readonly EventId[],
): Promise<void> {
  if (ids.length === 0) return;
  const kept = transaction.objectStore('kept');
  const checkpoint = (await kept.get(CHECKPOINT)) as Checkpoint | undefined;
  if (checkpoint && ids.some((id) => id <= checkpoint.base.upTo)) await kept.delete(CHECKPOINT);
}
