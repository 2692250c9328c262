/** Adding, showing, archiving and removing students. Loaded only when it is asked for. */
import { v4 } from 'uuid';
import type { StudentId } from '../../shared/log/events';
import { forgetHandOvers } from './hand-over';
import { dropParked, exchangeShown, readShown } from './own-keys';
import type { Connection } from './open';
import { after, readStanding } from './read';
import { type Listed, newlyListed, readRoster, withChange, writeRoster } from './roster';
import { write, type WriteTransaction } from './transaction';

/** The students of the device with the one who is shown, who is in no roster as long as there is nobody else. */
async function readAll(transaction: WriteTransaction): Promise<readonly Listed[]> {
  const [shown, roster] = await Promise.all([readShown(transaction), readRoster(transaction)]);
  return roster.length > 0 || shown === null ? roster : [newlyListed(shown)];
}

/** What the window knows of the student it shows, to be noted in the roster when another one is shown. */
export type Leaving = Pick<Listed, 'id' | 'name' | 'namedUpTo'>;

const changing = (
  connection: Connection,
  change: (transaction: WriteTransaction, all: readonly Listed[]) => Promise<readonly Listed[]>,
): Promise<void> =>
  connection.run((database) =>
    write(database, async (transaction) => {
      const all = await readAll(transaction);
      await writeRoster(transaction, await change(transaction, all));
    }),
  );

const withName = (all: readonly Listed[], { id, ...name }: Leaving): readonly Listed[] =>
  withChange(all, id, name);

export function showStudent(
  connection: Connection,
  student: StudentId,
  leaving: Leaving | null,
): Promise<void> {
  return changing(connection, async (transaction, all) => {
    // Another window may have removed the student meanwhile.
    if (!all.some(({ id }) => id === student)) return all;
    await exchangeShown(transaction, student);
    const known = leaving === null ? all : withName(all, leaving);
    return withChange(known, student, { isArchived: false });
  });
}

/** Adds a student without a record and shows it. The id that it was given. */
export async function addStudent(
  connection: Connection,
  leaving: Leaving | null,
): Promise<StudentId> {
  const added = newlyListed(v4());
  await changing(connection, async (transaction, all) => {
    // Done already, if the work is run again on a new connection.
    const before = all.filter(({ id }) => id !== added.id);
    await exchangeShown(transaction, added.id);
    return [...(leaving === null ? before : withName(before, leaving)), added];
  });
  return added.id;
}

/** Shows another student, if it is this one who is shown: the first who is not archived, or else the first. */
async function showAnother(
  transaction: WriteTransaction,
  student: StudentId,
  all: readonly Listed[],
): Promise<readonly Listed[]> {
  if ((await readShown(transaction)) !== student) return all;
  const others = all.filter(({ id }) => id !== student);
  const next = others.find(({ isArchived }) => !isArchived) ?? others[0];
  if (next === undefined) throw new RangeError(`the only student: ${student}`);
  await exchangeShown(transaction, next.id);
  return withChange(all, next.id, { isArchived: false });
}

export function archiveStudent(
  connection: Connection,
  student: StudentId,
  isArchived: boolean,
): Promise<void> {
  return changing(connection, async (transaction, all) => {
    const others = isArchived ? await showAnother(transaction, student, all) : all;
    return withChange(others, student, { isArchived });
  });
}

/** Keys as ranges without gaps: a record that was taken in from a file is one. */
function rangesOf(keys: readonly number[]): readonly IDBKeyRange[] {
  const sorted = keys.toSorted((a, b) => a - b);
  const starts = sorted.filter((key, i) => key !== sorted[i - 1]! + 1);
  const ends = sorted.filter((key, i) => key !== sorted[i + 1]! - 1);
  return starts.map((start, i) => IDBKeyRange.bound(start, ends[i]!));
}

/**
 * Deletes all events of a student and all that is kept about it. The highest number of an event never sinks, or windows
 * that follow the log by it could miss what comes later: so the last event that stays gets a new one.
 */
export function removeStudent(connection: Connection, student: StudentId): Promise<void> {
  return changing(connection, async (transaction, all) => {
    const others = await showAnother(transaction, student, all);
    await dropParked(transaction, student);
    await forgetHandOvers(transaction, student);
    const events = transaction.objectStore('events');
    const { sequence } = await readStanding(transaction);
    const keys = await events.index('replay').getAllKeys(after(student, ''));
    await Promise.all(rangesOf(keys).map((range) => events.delete(range)));
    const last = await events.openCursor(null, 'prev');
    if (last !== null && last.key < sequence) {
      const record = last.value;
      await last.delete();
      await events.add({ ...record, sequence: sequence + 1 });
    }
    return others.filter(({ id }) => id !== student);
  });
}
