/**
 * Who is on this device. It is about the device and not about the student, so it is no event: a student whom a teacher
 * puts away must not be put away on the student's own device.
 */
import type { EventId, LogEvent, StudentId } from '../../shared/log/events';
import { ROSTER } from './schema';
import type { ReadTransaction, WriteTransaction } from './transaction';

export interface Listed {
  readonly id: StudentId;
  /** As the log has it up to some event, so that the names can be shown without reading all logs. */
  readonly name: string | null;
  /** '' before the first. */
  readonly namedUpTo: EventId;
  readonly isArchived: boolean;
}

/** Empty as long as there is only one student. */
export type Roster = readonly Listed[];

export const newlyListed = (id: StudentId): Listed => ({
  id,
  name: null,
  namedUpTo: '',
  isArchived: false,
});

export async function readRoster(transaction: ReadTransaction | WriteTransaction): Promise<Roster> {
  return ((await transaction.objectStore('kept').get(ROSTER)) as Roster | undefined) ?? [];
}

export async function writeRoster(transaction: WriteTransaction, roster: Roster): Promise<void> {
  await transaction.objectStore('kept').put(roster, ROSTER);
}

export const withChange = (
  roster: Roster,
  id: StudentId,
  change: Partial<Omit<Listed, 'id'>>,
): Roster => roster.map((listed) => (listed.id === id ? { ...listed, ...change } : listed));

/** The roster with the names that these events give. */
export function named(roster: Roster, events: readonly LogEvent[]): Roster {
  const voided = new Set(events.flatMap((event) => (event.kind === 'void' ? event.events : [])));
  return events.reduce((before, event) => {
    if (event.kind !== 'name' || voided.has(event.id)) return before;
    const known = before.find(({ id }) => id === event.student);
    if (known === undefined || known.namedUpTo >= event.id) return before;
    return withChange(before, event.student, { name: event.name, namedUpTo: event.id });
  }, roster);
}

/** Takes the names that events give into the roster. */
export async function noteNames(
  transaction: WriteTransaction,
  events: readonly LogEvent[],
): Promise<void> {
  if (!events.some(({ kind }) => kind === 'name')) return;
  const roster = await readRoster(transaction);
  if (roster.length > 0) await writeRoster(transaction, named(roster, events));
}
