/** The connection to the database: opened when it is needed, given up when the browser or another window asks for it. */
import { openDB } from 'idb';
import { isLostConnection, nameOf, StoreError, storeErrorOf } from './errors';
import { type LogDatabase, type LogSchema, SCHEMA_VERSION, upgrade } from './schema';

export interface ConnectionEvents {
  /** A newer version of the app wants the database, or has it: this page can only be reloaded. */
  outdated(): void;
  /** True when another window has kept the database from opening for a second, false when that is over. */
  blocked(isBlocked: boolean): void;
  /** Another window deletes the database. */
  deleted(): void;
}

export interface Connection {
  /**
   * Runs work on an open database. If the browser takes the connection away meanwhile, the work is run once more on a
   * new one, so it must be idempotent. Rejects with a StoreError.
   */
  run<T>(work: (database: LogDatabase) => Promise<T>): Promise<T>;
  close(): void;
}

/** Milliseconds that another window gets to let go of the database before the person is asked to close it. */
const PATIENCE = 1000;

/** `version` is that of the schema; only tests give another. */
export function connect(
  name: string,
  events: ConnectionEvents,
  version = SCHEMA_VERSION,
): Connection {
  let current: Promise<LogDatabase> | null = null;
  let isOutdated = false;

  const drop = () => {
    void current?.then(
      (database) => database.close(),
      () => undefined,
    );
    current = null;
  };

  const giveUp = () => {
    isOutdated = true;
    drop();
    events.outdated();
  };

  const open = async (): Promise<LogDatabase> => {
    let waiting: ReturnType<typeof setTimeout> | undefined;
    try {
      return await openDB<LogSchema>(name, version, {
        upgrade,
        blocked: () => {
          waiting = setTimeout(() => events.blocked(true), PATIENCE);
        },
        blocking: (_version, wanted) => {
          if (wanted !== null) return giveUp();
          drop();
          events.deleted();
        },
        terminated: drop,
      });
    } catch (error) {
      current = null;
      if (nameOf(error) === 'VersionError') giveUp();
      throw isLostConnection(error) ? error : new StoreError('unavailable', { cause: error });
    } finally {
      clearTimeout(waiting);
      events.blocked(false);
    }
  };

  const attempt = async <T>(work: (database: LogDatabase) => Promise<T>): Promise<T> => {
    if (isOutdated) throw new StoreError('outdated');
    current ??= open();
    return work(await current);
  };

  return {
    run: async (work) => {
      try {
        return await attempt(work).catch((error: unknown) => {
          if (!isLostConnection(error)) throw error;
          drop();
          return attempt(work);
        });
      } catch (error) {
        throw isOutdated ? new StoreError('outdated', { cause: error }) : storeErrorOf(error);
      }
    },
    close: drop,
  };
}
