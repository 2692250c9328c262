/** An event as the log keeps it: with its id and student outside, so that one that can't be read keeps its place. */
import type { EventId, StudentId } from '../log/events';
import { type Decoded, decodeEvent } from './event';

export type Outcome = Decoded['outcome'];

export interface KeptEvent {
  readonly id: EventId;
  readonly student: StudentId;
  readonly event: unknown;
}

/** Decodes a kept event, which is damaged too if it claims another id or student than it is kept under. */
export function decodeKept({ id, student, event }: KeptEvent): Decoded {
  const decoded = decodeEvent(event);
  if (decoded.outcome === 'damaged') return decoded;
  const claimed = event as { readonly id?: unknown; readonly student?: unknown };
  if (claimed.id !== id) return { outcome: 'damaged', problem: 'id: not the one it is kept under' };
  if (claimed.student !== student) {
    return { outcome: 'damaged', problem: 'student: not the one it is kept under' };
  }
  return decoded;
}

/** How much can be read of an event. */
const READABLE: Readonly<Record<Outcome, number>> = { damaged: 0, newer: 1, ok: 2 };

/**
 * Whether a copy of an event is to be kept in place of the one that is here, if there is one: only if more of it can be
 * read. Of two that are read alike the one here stays, so no file changes what counts, and nothing damaged gives way to
 * what is no better.
 */
export const goesBefore = (copy: Outcome, here: Outcome | undefined): boolean =>
  here === undefined || READABLE[copy] > READABLE[here];
