/**
 * A file of a log, as JSON Lines: a header, then one event a line. It is the backup of a device with all its students,
 * or the file of one student, whole or with what is new since it was last handed over. It is written in chunks, so that
 * a long log is never one string; shared/formats/backup-reader.ts reads it.
 *
 * An event of a later version is written as it is. A damaged one cannot be trusted to say its own id, so it is written
 * as {"id": …, "student": …, "damaged": …} and comes back as it was.
 */
import type { Day, EventId, StudentId } from '../log/events';
import { type Decoded, LONGEST_TEXT } from './event';
import { decodeKept, goesBefore, type KeptEvent, type Outcome } from './kept';
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
  /** Each id once, in the order of the file; the best copy where there are several. */
  readonly entries: readonly BackupEntry[];
  /** The last event that was handed over before, if the file holds only what came after it. */
  readonly after: EventId | null;
}

/** What a file holds of one student. */
export interface StudentPreview {
  readonly student: StudentId;
  /** The latest in the file, or else the one known here. */
  readonly name: string | null;
  /** Whether the student is on this device already. */
  readonly isKnown: boolean;
  readonly events: number;
  /** Runs that no correction has voided. */
  readonly runs: number;
  readonly firstDay: Day | null;
  readonly lastDay: Day | null;
  /** Events that are not on this device yet. */
  readonly fresh: number;
  /** Events that this device has damaged and the file has whole. */
  readonly mended: number;
  /** Written by a later version: restored, but not read until the app is updated. */
  readonly newer: number;
  /** Damaged in the log that was backed up: restored, but set aside. */
  readonly damaged: number;
}

/** What taking a file in would do, to be shown before it is done. */
export interface BackupPreview {
  readonly made: string;
  /** By the first event of each in the file. */
  readonly students: readonly StudentPreview[];
  /** What the log lacks, or has damaged; it stays in the thread that has read the file, if that is not the page's own. */
  readonly fresh: readonly BackupEntry[];
  /** Whether the file follows an earlier one that has not been taken in here. */
  readonly hasGap: boolean;
}

/** What of a file is on the device already, and how each event is read there. */
export interface Here {
  readonly events: ReadonlyMap<EventId, Outcome>;
  readonly names: ReadonlyMap<StudentId, string | null>;
}

export const backupFileName = (day: Day): string => `arpeggiary-${day}${BACKUP_EXTENSION}`;

/** Characters of a name within the name of a file. */
const LONGEST_NAME_PART = 40;

/** "arpeggiary-ada-lindt-2026-11-25.arpeggiary": of the name what every system takes in the name of a file. */
export function studentFileName(name: string | null, day: Day): string {
  const words = (name ?? '').toLowerCase().match(/[\p{Letter}\p{Mark}\p{Number}]+/gu) ?? [
    'student',
  ];
  const part = [...words.join('-')].slice(0, LONGEST_NAME_PART).join('');
  return `arpeggiary-${part}-${day}${BACKUP_EXTENSION}`;
}

/** `made` in milliseconds since 1970 UTC; `after` is the last event of the file that this one follows. */
export const headerLine = (made: number, events: number, after: EventId | null = null): string =>
  `${JSON.stringify({
    format: BACKUP_FORMAT,
    version: BACKUP_VERSION,
    made: new Date(made).toISOString(),
    events,
    ...(after === null ? {} : { after }),
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

const isBetter = ({ id, decoded }: BackupEntry, { events }: Here): boolean =>
  goesBefore(decoded.outcome, events.get(id));

function previewOfStudent(
  student: StudentId,
  entries: readonly BackupEntry[],
  here: Here,
): StudentPreview {
  const events = entries.flatMap(({ decoded }) =>
    decoded.outcome === 'ok' ? [decoded.event] : [],
  );
  const voided = new Set(events.flatMap((event) => (event.kind === 'void' ? event.events : [])));
  const counted = events.filter(({ id }) => !voided.has(id));
  const days = events.map(({ day }) => day).toSorted();
  const names = counted.filter((event) => event.kind === 'name');
  const last = names.toSorted((a, b) => (a.id < b.id ? -1 : 1)).at(-1);
  const count = (outcome: Outcome) =>
    entries.filter(({ decoded }) => decoded.outcome === outcome).length;
  return {
    student,
    name: last?.name ?? here.names.get(student) ?? null,
    isKnown: here.names.has(student),
    events: entries.length,
    runs: counted.filter(({ kind }) => kind === 'run').length,
    firstDay: days[0] ?? null,
    lastDay: days.at(-1) ?? null,
    fresh: entries.filter(({ id }) => !here.events.has(id)).length,
    mended: entries.filter((entry) => here.events.has(entry.id) && isBetter(entry, here)).length,
    newer: count('newer'),
    damaged: count('damaged'),
  };
}

export function previewOf({ made, entries, after }: Backup, here: Here): BackupPreview {
  const byStudent = new Map<StudentId, BackupEntry[]>();
  for (const entry of entries) {
    const own = byStudent.get(entry.student);
    if (own === undefined) byStudent.set(entry.student, [entry]);
    else own.push(entry);
  }
  return {
    made,
    students: [...byStudent].map(([student, own]) => previewOfStudent(student, own, here)),
    fresh: entries.filter((entry) => isBetter(entry, here)),
    hasGap: after !== null && !here.events.has(after),
  };
}
