/**
 * A backup of a log, as JSON Lines: a header, then one event a line. It is written in chunks, so that a long log is
 * never one string; shared/formats/backup-reader.ts reads it.
 *
 * An event of a later version is written as it is. A damaged one cannot be trusted to say its own id, so it is written
 * as {"id": …, "student": …, "damaged": …} and comes back as it was.
 */
import type { Day, EventId, StudentId } from '../log/events';
import { type Decoded, LONGEST_TEXT } from './event';
import { decodeKept, type KeptEvent } from './kept';
import { findFault } from './limits';

export const BACKUP_FORMAT = 'arpeggiary-log';
export const BACKUP_VERSION = 1;
export const BACKUP_EXTENSION = '.arpeggiary';
export const BACKUP_MIME = 'application/vnd.arpeggiary.log';

/** What is wrong with a file, in words for the person; `line` counts from 1. */
export class BackupError extends Error {
  override readonly name = 'BackupError';
  constructor(
    message: string,
    readonly line: number | null = null,
  ) {
    super(message);
  }
}

/** One event of a backup; `event` is what the log is to keep. */
export interface BackupEntry extends KeptEvent {
  readonly decoded: Decoded;
}

export interface Backup {
  /** When it was written, ISO 8601. */
  readonly made: string;
  /** Each id once, in the order of the file. */
  readonly entries: readonly BackupEntry[];
  readonly students: ReadonlySet<StudentId>;
}

/** What a restore would do, to be shown before it is done. */
export interface BackupPreview {
  readonly made: string;
  readonly events: number;
  /** Runs that no correction has voided. */
  readonly runs: number;
  readonly firstDay: Day | null;
  readonly lastDay: Day | null;
  /** The latest name of each student; empty if none was given. */
  readonly names: readonly string[];
  readonly alreadyHere: number;
  readonly fresh: readonly BackupEntry[];
  /** Written by a later version: restored, but not read until the app is updated. */
  readonly newer: number;
  /** Damaged in the log that was backed up: restored, but set aside. */
  readonly damaged: number;
}

export const backupFileName = (day: Day): string => `arpeggiary-${day}${BACKUP_EXTENSION}`;

/** `made` in milliseconds since 1970 UTC. */
export const headerLine = (made: number, events: number): string =>
  `${JSON.stringify({
    format: BACKUP_FORMAT,
    version: BACKUP_VERSION,
    made: new Date(made).toISOString(),
    events,
  })}\n`;

/** A damaged value as JSON if the reader will take that, or else the beginning of its text. */
function damagedValue(event: unknown): unknown {
  let text: string | undefined;
  try {
    text = JSON.stringify(event);
  } catch {
    // IndexedDB keeps what JSON cannot say (cycles, big integers).
  }
  if (text === undefined) return String(event);
  const isReadable = text.length <= LONGEST_TEXT && findFault(JSON.parse(text), 2) === null;
  return isReadable ? event : text.slice(0, LONGEST_TEXT);
}

function lineOf(kept: KeptEvent): string {
  if (decodeKept(kept).outcome !== 'damaged') return `${JSON.stringify(kept.event)}\n`;
  const { id, student, event } = kept;
  return `${JSON.stringify({ id, student, damaged: damagedValue(event) })}\n`;
}

/** The lines of some events, each ended by a line feed. */
export const eventLines = (events: readonly KeptEvent[]): string => events.map(lineOf).join('');

/** `here` are the ids that the log already holds. */
export function previewOf(backup: Backup, here: ReadonlySet<EventId>): BackupPreview {
  const decoded = backup.entries.map((entry) => entry.decoded);
  const events = decoded.flatMap((one) => (one.outcome === 'ok' ? [one.event] : []));
  const voided = new Set(events.flatMap((event) => (event.kind === 'void' ? event.events : [])));
  const runs = events.filter((event) => event.kind === 'run' && !voided.has(event.id));
  const days = events.map((event) => event.day).toSorted();
  const names = new Map<StudentId, string>();
  for (const event of events.toSorted((a, b) => (a.id < b.id ? -1 : 1))) {
    if (event.kind === 'name' && !voided.has(event.id)) names.set(event.student, event.name);
  }
  const fresh = backup.entries.filter((entry) => !here.has(entry.id));
  return {
    made: backup.made,
    events: backup.entries.length,
    runs: runs.length,
    firstDay: days[0] ?? null,
    lastDay: days.at(-1) ?? null,
    names: [...names.values()],
    alreadyHere: backup.entries.length - fresh.length,
    fresh,
    newer: decoded.filter((one) => one.outcome === 'newer').length,
    damaged: decoded.filter((one) => one.outcome === 'damaged').length,
  };
}
