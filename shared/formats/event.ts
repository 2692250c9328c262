/**
 * The door of the log: an event from outside (a file, the database) is decoded field by field into a fresh object.
 * Whatever is not on the list is left behind, so that no foreign key travels on.
 */
import * as v from 'valibot';
import { EVENT_VERSION, type LogEvent, type RunEvent } from '../log/events';
import { parseItemId } from '../music/deck';
import { FASTEST, SLOWEST } from '../music/tempo';
import {
  EVENT_SCHEMAS,
  isDay,
  isEventId,
  isStudentId,
  LATEST,
  LONGEST_ENTRY,
} from './event-schema';

export {
  isEventId,
  isStudentId,
  LONGEST_DATE_WORDS,
  LONGEST_NAME,
  LONGEST_TEXT,
} from './event-schema';

export type Decoded =
  | { readonly outcome: 'ok'; readonly event: LogEvent }
  /** Written by a later version of the app: to be kept as it is until this one is updated. */
  | { readonly outcome: 'newer'; readonly problem: string }
  /** `problem` names the field: "tempo: …". */
  | { readonly outcome: 'damaged'; readonly problem: string };

/** Characters: the message quotes the value it found, which may be of any length. */
const LONGEST_PROBLEM = 160;

type Fields = Readonly<Partial<Record<string, unknown>>>;

const damaged = (problem: string): Decoded => ({ outcome: 'damaged', problem });
const newer = (problem: string): Decoded => ({ outcome: 'newer', problem });

const isWhole = (value: unknown, least: number, most: number): value is number =>
  Number.isInteger(value) && (value as number) >= least && (value as number) <= most;

/** The same check with a memory of the last value that passed: neighbours in a log share day, device and student. */
function remembering<T>(check: (value: unknown) => value is T): (value: unknown) => value is T {
  let passed: unknown;
  return (value): value is T => {
    if (value !== undefined && value === passed) return true;
    if (!check(value)) return false;
    passed = value;
    return true;
  };
}

const isKnownDay = remembering(isDay);
const isKnownDevice = remembering(isStudentId);
const isKnownStudent = remembering(isStudentId);

/**
 * The run schema written out by hand, null where it would find fault. Almost all of a log is runs, and the schema takes
 * longer over one than JSON.parse does. A property test holds the two together.
 */
function decodeRun(fields: Fields): RunEvent | null {
  const { id, at, day, device, student, item, tempo, fluency, pedal, judge, entry } = fields;
  // Few runs were heard; those are left to the schema.
  if ('take' in fields) return null;
  const isStamped =
    isEventId(id) &&
    isWhole(at, 0, LATEST) &&
    isKnownDay(day) &&
    isKnownDevice(device) &&
    isKnownStudent(student);
  if (!isStamped) return null;
  const found = typeof item === 'string' ? parseItemId(item) : null;
  if (found === null || typeof pedal !== 'boolean') return null;
  if (typeof tempo !== 'number' || !(tempo >= SLOWEST && tempo <= FASTEST)) return null;
  if (!isWhole(fluency, 0, 4) || (judge !== 'player' && judge !== 'teacher')) return null;
  if (entry !== null && !(typeof entry === 'string' && entry.length <= LONGEST_ENTRY)) return null;
  return {
    id,
    version: EVENT_VERSION,
    at,
    day,
    device,
    student,
    kind: 'run',
    item: found.id,
    tempo,
    fluency: fluency as RunEvent['fluency'],
    pedal,
    judge,
    entry,
  };
}

const isKind = (kind: string): kind is LogEvent['kind'] => Object.hasOwn(EVENT_SCHEMAS, kind);

/** Decodes one event. Never throws. */
export function decodeEvent(value: unknown): Decoded {
  if (typeof value !== 'object' || value === null) return damaged('not an event');
  const fields = value as Fields;
  const { version, kind } = fields;
  if (!isWhole(version, 1, Number.MAX_SAFE_INTEGER)) return damaged('version: not a number from 1');
  if (version > EVENT_VERSION) return newer(`version ${version}`);
  if (typeof kind !== 'string') return damaged('kind: missing');
  if (!isKind(kind)) return newer('an unknown kind of event');
  const run = kind === 'run' ? decodeRun(fields) : null;
  if (run) return { outcome: 'ok', event: run };
  const schema: v.GenericSchema<unknown, LogEvent> = EVENT_SCHEMAS[kind];
  const result = v.safeParse(schema, value, { abortEarly: true });
  if (result.success) return { outcome: 'ok', event: result.output };
  const [issue] = result.issues;
  return damaged(`${v.getDotPath(issue) ?? 'events'}: ${issue.message}`.slice(0, LONGEST_PROBLEM));
}
