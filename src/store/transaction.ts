/** One transaction over the whole database, with its failures told properly. */
import type { IDBPTransaction } from 'idb';
import { nameOf } from './errors';
import type { LogDatabase, LogSchema } from './schema';

type Stores = ['events', 'kept'];
export type ReadTransaction = IDBPTransaction<LogSchema, Stores, 'readonly'>;
export type WriteTransaction = IDBPTransaction<LogSchema, Stores, 'readwrite'>;

const STORES: Stores = ['events', 'kept'];

function abort(transaction: ReadTransaction | WriteTransaction): void {
  try {
    transaction.abort();
  } catch {
    // The failed request had aborted it already.
  }
}

async function settle<T, Tx extends ReadTransaction | WriteTransaction>(
  transaction: Tx,
  work: (transaction: Tx) => Promise<T>,
): Promise<T> {
  // Requests succeed before the commit, and a full device fails only the commit.
  const [worked, committed] = await Promise.allSettled([
    work(transaction).catch((error: unknown) => {
      abort(transaction);
      throw error;
    }),
    transaction.done,
  ]);
  if (worked.status === 'fulfilled' && committed.status === 'fulfilled') return worked.value;
  const reasons = [worked, committed].flatMap((one) =>
    one.status === 'rejected' ? [one.reason as unknown] : [],
  );
  // Where one of the two only tells that the transaction was aborted, the other knows why.
  throw reasons.find((reason) => nameOf(reason) !== 'AbortError') ?? reasons[0];
}

/** Only requests of the transaction may be awaited in `work`; anything else ends it. */
export const read = <T>(
  database: LogDatabase,
  work: (transaction: ReadTransaction) => Promise<T>,
): Promise<T> => settle(database.transaction(STORES), work);

/** Writing what may be lost when the power goes: a draft, a wish. */
export const note = <T>(
  database: LogDatabase,
  work: (transaction: WriteTransaction) => Promise<T>,
): Promise<T> => settle(database.transaction(STORES, 'readwrite'), work);

/**
 * The same for the log. Resolves when all is on the device ("strict": the operating system was told to write it out).
 * If any of it fails, nothing of it stays.
 */
export const write = <T>(
  database: LogDatabase,
  work: (transaction: WriteTransaction) => Promise<T>,
): Promise<T> => settle(database.transaction(STORES, 'readwrite', { durability: 'strict' }), work);
