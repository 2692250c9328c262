/**
 * To whom the records of students have been handed over and how far, so that the next file holds only what is new; and
 * when the last file came from elsewhere.
 */
import type { Day, StudentId } from '../../shared/log/events';
import type { Mark } from './exchange';
import type { Connection } from './open';
import { HANDED_OVER, TAKEN_IN } from './schema';
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

/** For each student when the youngest file that was taken in was made, in milliseconds since 1970 UTC. */
type TakenIn = Readonly<Partial<Record<StudentId, number>>>;

async function readTakenIn(transaction: ReadTransaction | WriteTransaction): Promise<TakenIn> {
  return ((await transaction.objectStore('kept').get(TAKEN_IN)) as TakenIn | undefined) ?? {};
}

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

/** Notes that a file of that time, with records of these students, has been taken in. */
export async function noteTakenIn(
  transaction: WriteTransaction,
  students: readonly StudentId[],
  made: number,
): Promise<void> {
  const before = await readTakenIn(transaction);
  const youngest = students.map((one) => [one, Math.max(made, before[one] ?? 0)] as const);
  const now: TakenIn = { ...before, ...Object.fromEntries(youngest) };
  await transaction.objectStore('kept').put(now, TAKEN_IN);
}

/** The last hand-over of a student, and when the youngest file from elsewhere was made. */
export async function readExchange(transaction: ReadTransaction, student: StudentId) {
  const [all, takenIn] = await Promise.all([readAll(transaction), readTakenIn(transaction)]);
  const given = all.find((handOver) => handOver.student === student) ?? null;
  return { given, came: takenIn[student] ?? null };
}

/** Forgets what was noted about a student. */
export async function forgetHandOvers(
  transaction: WriteTransaction,
  student: StudentId,
): Promise<void> {
  const kept = transaction.objectStore('kept');
  const others = (await readAll(transaction)).filter((one) => one.student !== student);
  const { [student]: _, ...takenIn } = await readTakenIn(transaction);
  await Promise.all([kept.put(others, HANDED_OVER), kept.put(takenIn, TAKEN_IN)]);
}
