/** To whom the records of students have been handed over and how far, so that the next file holds only what is new. */
import type { Day, StudentId } from '../../shared/log/events';
import type { Mark } from './exchange';
import type { Connection } from './open';
import { HANDED_OVER } from './schema';
import { note, type ReadTransaction, read, type WriteTransaction } from './transaction';

export interface HandOver {
  readonly student: StudentId;
  /** As the person calls them: "teacher". */
  readonly receiver: string;
  readonly mark: Mark;
  readonly day: Day;
}

/** More receivers than a student has; the oldest are forgotten, and would be given the whole record. */
const MOST = 20;

async function readAll(
  transaction: ReadTransaction | WriteTransaction,
): Promise<readonly HandOver[]> {
  const kept = await transaction.objectStore('kept').get(HANDED_OVER);
  return (kept as readonly HandOver[] | undefined) ?? [];
}

/** The last one first. */
export const handOversOf = (
  connection: Connection,
  student: StudentId,
): Promise<readonly HandOver[]> =>
  connection.run(async (database) => {
    const all = await read(database, readAll);
    return all.filter((handOver) => handOver.student === student);
  });

export const noteHandOver = (connection: Connection, made: HandOver): Promise<void> =>
  connection.run((database) =>
    note(database, async (transaction) => {
      const isOfThis = ({ student }: HandOver) => student === made.student;
      const all = await readAll(transaction);
      const own = all.filter((one) => isOfThis(one) && one.receiver !== made.receiver);
      const others = all.filter((one) => !isOfThis(one));
      const kept = [made, ...own.slice(0, MOST - 1), ...others];
      await transaction.objectStore('kept').put(kept, HANDED_OVER);
    }),
  );

/** Forgets what was noted about a student. */
export async function forgetHandOvers(
  transaction: WriteTransaction,
  student: StudentId,
): Promise<void> {
  const others = (await readAll(transaction)).filter((one) => one.student !== student);
  await transaction.objectStore('kept').put(others, HANDED_OVER);
}
