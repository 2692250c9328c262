/** Reads the file of a log as its text arrives, within limits, all or nothing. */
import * as v from 'valibot';
import type { EventId } from '../log/events';
import {
  type Backup,
  BACKUP_FORMAT,
  BACKUP_VERSION,
  type BackupEntry,
  BackupError,
} from './backup';
import { isEventId, isStudentId } from './event';
import { decodeKept, goesBefore } from './kept';
import { findFault } from './limits';

/** Bytes. 64 MB holds some 200,000 runs. */
export const LARGEST_FILE = 64 * 1024 * 1024;
export const MOST_LINES = 400_000;
/** Characters. */
export const LONGEST_LINE = 20_000;

const OTHER_FILE = 'Nothing was changed. Choose another file.';

const Header = v.object({
  format: v.literal(BACKUP_FORMAT),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
  made: v.pipe(v.string(), v.isoTimestamp()),
  events: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(MOST_LINES)),
  after: v.exactOptional(v.custom<EventId>(isEventId)),
});
type Header = v.InferOutput<typeof Header>;

/** To be asked before a file is opened. Throws a BackupError if it is larger than any log should be. */
export function checkSize(bytes: number): void {
  if (bytes > LARGEST_FILE) {
    throw new BackupError('This file is larger than 64 MB, so it is no Arpeggiary file.');
  }
}

/** One file: `push` its text in pieces of any length, then `end`. Both throw nothing but a BackupError. */
export class BackupReader {
  private pending = '';
  private line = 0;
  private header: Header | null = null;
  private read = 0;
  private readonly entries = new Map<EventId, BackupEntry>();

  push(text: string): void {
    const lines = (this.pending + text).split('\n');
    this.pending = lines.pop()!;
    for (const line of lines) this.takeLine(line);
    if (this.pending.length > LONGEST_LINE) this.fail('too long', this.line + 1);
  }

  end(): Backup {
    const { header } = this;
    const isCutOff = header !== null && this.read + (this.pending === '' ? 0 : 1) < header.events;
    if (isCutOff) {
      throw new BackupError(
        `The file stops after ${this.read} of ${header.events} events: it was cut off when it was copied. Copy it again, or choose another file.`,
        this.line,
      );
    }
    if (this.pending !== '') this.takeLine(this.pending);
    if (this.header === null) throw new BackupError('The file is empty. Choose another file.');
    return {
      made: this.header.made,
      entries: [...this.entries.values()],
      after: this.header.after ?? null,
    };
  }

  private takeLine(text: string): void {
    this.line += 1;
    if (text.length > LONGEST_LINE) this.fail('too long');
    // Editors may add an empty line, or a carriage return, which JSON passes over.
    if (text.trim() === '') return;
    const value = this.parse(text);
    if (this.header === null) this.header = this.readHeader(value);
    else this.takeEvent(value, this.header);
  }

  private parse(text: string): unknown {
    try {
      return JSON.parse(text);
    } catch {
      return undefined;
    }
  }

  private readHeader(value: unknown): Header {
    const result = v.safeParse(Header, value);
    if (!result.success) {
      throw new BackupError(
        'This is not an Arpeggiary file. Choose a file whose name ends in .arpeggiary.',
        1,
      );
    }
    if (result.output.version > BACKUP_VERSION) {
      throw new BackupError(
        'This file was made by a later version of Arpeggiary. Update the app here, then open it again.',
        1,
      );
    }
    return result.output;
  }

  private takeEvent(value: unknown, header: Header): void {
    this.read += 1;
    if (this.read > header.events) this.fail('beyond the number of events that the file announces');
    const fault = value === undefined ? 'not JSON' : findFault(value);
    if (fault !== null) this.fail(fault);
    const entry = this.entryOf(value);
    const before = this.entries.get(entry.id)?.decoded.outcome;
    if (goesBefore(entry.decoded.outcome, before)) this.entries.set(entry.id, entry);
  }

  private entryOf(value: unknown): BackupEntry {
    if (typeof value !== 'object' || value === null) return this.fail('not an event');
    const { id, student } = value as { readonly id?: unknown; readonly student?: unknown };
    if (!isEventId(id)) return this.fail('id: not the id of an event');
    if (!isStudentId(student)) return this.fail('student: not the id of a student');
    const isMarked = Object.hasOwn(value, 'damaged');
    const event = isMarked ? (value as { readonly damaged?: unknown }).damaged : value;
    const decoded = decodeKept({ id, student, event });
    if (decoded.outcome === 'damaged' && !isMarked) return this.fail(decoded.problem);
    return { id, student, event: decoded.outcome === 'ok' ? decoded.event : event, decoded };
  }

  private fail(problem: string, line = this.line): never {
    throw new BackupError(`Line ${line} of the file is damaged (${problem}). ${OTHER_FILE}`, line);
  }
}
