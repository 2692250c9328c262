/** Appending to the log: sequence and id are given in the transaction that adds the event. */
import { v4 } from 'uuid';
import { decodeEvent } from '../../shared/formats/event';
import {
  type Day,
  EVENT_VERSION,
  type EventBody,
  type EventId,
  type LogEvent,
  type StudentId,
} from '../../shared/log/events';
import { dropCheckpointOver } from './checkpoint';
import { StoreError } from './errors';
import { nextEventId } from './event-id';
import { readShown } from './own-keys';
import { noteNames, readRoster } from './roster';
import { DEVICE, type LogDatabase, recordOf, STUDENT } from './schema';
import { write, type WriteTransaction } from './transaction';

export interface Circumstances {
  /** Milliseconds since 1970 UTC. */
  readonly at: number;
  readonly day: Day;
  /** Null: the one who is shown, or, on a new device, one who is made now. */
  readonly student: StudentId | null;
}

/** The id of the device or the student, made when it is first asked for. */
async function ownId(transaction: WriteTransaction, key: string): Promise<string> {
  const kept = transaction.objectStore('kept');
  const known = await kept.get(key);
  if (typeof known === 'string') return known;
  const made = v4();
  await kept.put(made, key);
  return made;
}

/** Another window may have removed the student meanwhile, or erased all. */
async function checkIsHere(transaction: WriteTransaction, student: StudentId): Promise<StudentId> {
  const [shown, roster] = await Promise.all([readShown(transaction), readRoster(transaction)]);
  if (shown === null) await transaction.objectStore('kept').put(student, STUDENT);
  if (shown === null || shown === student) return student;
  if (roster.some(({ id }) => id === student)) return student;
  throw new StoreError('removed');
}

function eventOf(body: EventBody, stamp: Omit<LogEvent, keyof EventBody>): LogEvent {
  const decoded = decodeEvent({ ...body, ...stamp });
  if (decoded.outcome === 'ok') return decoded.event;
  throw new StoreError('invalid', { detail: `${body.kind}, ${decoded.problem}` });
}

async function append(
  transaction: WriteTransaction,
  bodies: readonly EventBody[],
  { at, day, student: wanted }: Circumstances,
): Promise<readonly LogEvent[]> {
  const store = transaction.objectStore('events');
  const [device, student, lastRecord, lastId] = await Promise.all([
    ownId(transaction, DEVICE),
    wanted === null ? ownId(transaction, STUDENT) : checkIsHere(transaction, wanted),
    store.openKeyCursor(null, 'prev'),
    store.index('id').openKeyCursor(null, 'prev'),
  ]);
  let last: EventId | null = lastId?.key ?? null;
  const events = bodies.map((body) => {
    last = nextEventId(last, at);
    return eventOf(body, { id: last, version: EVENT_VERSION, at, day, device, student });
  });
  const first = (lastRecord?.primaryKey ?? 0) + 1;
  const records = events.map((event, i) => recordOf({ id: event.id, student, event }, first + i));
  await dropCheckpointOver(
    transaction,
    student,
    records.flatMap(({ voids = [] }) => voids),
  );
  // Async, so that an add that throws at once does not leave the others without anybody to tell.
  await Promise.all(records.map(async (record) => store.add(record)));
  await noteNames(transaction, events);
  return events;
}

/**
 * What records some events, all or none, on a database. It may be run again if it is not known whether the first time
 * succeeded: the events are not added twice.
 */
export function appending(
  bodies: readonly EventBody[],
  circumstances: Circumstances,
): (database: LogDatabase) => Promise<readonly LogEvent[]> {
  let attempted: readonly LogEvent[] = [];
  return (database) =>
    write(database, async (transaction) => {
      const ids = transaction.objectStore('events').index('id');
      const first = attempted[0];
      const isThere = first !== undefined && (await ids.getKey(first.id)) !== undefined;
      if (!isThere) attempted = await append(transaction, bodies, circumstances);
      return attempted;
    });
}
