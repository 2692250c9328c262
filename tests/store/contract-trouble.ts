/** What browsers and other windows do to a database. */
import { openDB } from 'idb';
import { StoreError } from '../../src/store/errors';
import { connect } from '../../src/store/open';
import { type LogSchema, upgrade } from '../../src/store/schema';
import { holds, rejection, same, until } from './check';
import { DAY, programme, type Promises, run, runs, type World } from './world';

/** Replaces a method for as long as some work takes. */
export async function replacing<T extends object, K extends keyof T, R>(
  target: T,
  key: K,
  replacement: (original: T[K]) => T[K],
  work: () => Promise<R>,
): Promise<R> {
  const original = target[key];
  target[key] = replacement(original);
  try {
    return await work();
  } finally {
    target[key] = original;
  }
}

type Add = IDBObjectStore['add'];

/** Lets so many events be added, then fails with an error of this name. */
export const failingAfter =
  (count: number, name: string) =>
  (original: Add): Add => {
    let added = 0;
    return function add(this: IDBObjectStore, ...args: Parameters<Add>) {
      added += 1;
      if (added > count) throw new DOMException('made by the test', name);
      return original.apply(this, args);
    };
  };

/** Collects what would be done when the page is idle; `idle` does it. */
async function collectingIdleTasks(work: (idle: () => void) => Promise<void>): Promise<void> {
  const own = Object.getOwnPropertyDescriptor(globalThis, 'requestIdleCallback');
  const tasks: IdleRequestCallback[] = [];
  globalThis.requestIdleCallback = (task) => tasks.push(task);
  const deadline: IdleDeadline = { didTimeout: false, timeRemaining: () => 50 };
  try {
    await work(() => tasks.splice(0).forEach((task) => task(deadline)));
  } finally {
    Reflect.deleteProperty(globalThis, 'requestIdleCallback');
    if (own) Object.defineProperty(globalThis, 'requestIdleCallback', own);
  }
}

const refusing = (): IDBFactory['open'] => () => {
  throw new DOMException('made by the test', 'SecurityError');
};

/** All connections that are opened meanwhile. */
async function connectionsOf<R>(
  work: (connections: readonly IDBDatabase[]) => Promise<R>,
): Promise<R> {
  const connections: IDBDatabase[] = [];
  const collecting = (original: IDBFactory['open']): IDBFactory['open'] =>
    function open(this: IDBFactory, ...args: Parameters<IDBFactory['open']>) {
      const request = original.apply(this, args);
      request.addEventListener('success', () => connections.push(request.result));
      return request;
    };
  return replacing(indexedDB, 'open', collecting, () => work(connections));
}

const kindOf = async (promise: Promise<unknown>): Promise<string> => {
  const error = await rejection(promise);
  holds(error instanceof StoreError, `a StoreError, not ${error.name}: ${error.message}`);
  return error.kind;
};

/** A window of a newer version: opens the database with a higher number. */
const newerWindow = (world: World) => openDB(world.name, 2);

export const aboutTrouble: Promises = {
  'writes strictly': async (world) => {
    const options: unknown[] = [];
    const watching = (original: IDBDatabase['transaction']): IDBDatabase['transaction'] =>
      function transaction(this: IDBDatabase, ...args: Parameters<IDBDatabase['transaction']>) {
        if (args[1] === 'readwrite') options.push(args[2]);
        return original.apply(this, args);
      };
    const store = await world.ready();
    await replacing(IDBDatabase.prototype, 'transaction', watching, () => store.record([run()]));
    same(options, [{ durability: 'strict' }]);
  },

  'no room left: told as such, nothing half written, and it works again later': async (world) => {
    const store = await world.ready();
    await store.record([programme()]);
    for (const fitting of [0, 2]) {
      const full = failingAfter(fitting, 'QuotaExceededError');
      await replacing(IDBObjectStore.prototype, 'add', full, async () => {
        same(await kindOf(store.record(runs(3))), 'full');
      });
      same((await world.records()).length, 1);
      same(store.todaysRuns.value, []);
    }
    await store.record(runs(3));
    await world.agrees(store);
  },

  'a transaction that is aborted leaves nothing behind': async (world) => {
    const store = await world.ready();
    await store.record([programme()]);
    const failing = failingAfter(2, 'DataError');
    await replacing(IDBObjectStore.prototype, 'add', failing, async () => {
      same(await kindOf(store.record(runs(5))), 'failed');
    });
    same((await world.records()).length, 1);
    same((await store.record([run()])).length, 1);
    same(
      (await world.records()).map(({ sequence }) => sequence),
      [1, 2],
    );
    await world.agrees(store);
  },

  'a connection that is lost is opened anew': async (world) => {
    await connectionsOf(async (connections) => {
      const store = await world.ready();
      await store.record([programme()]);
      for (let i = 0; i < 3; i++) {
        for (const connection of connections) connection.close();
        await store.record(runs(2));
        await world.agrees(store);
      }
      same((await world.records()).length, 7);
      for (const connection of connections) connection.close();
      same((await store.runsOf(run().item)).length, 0);
    });
  },

  'a commit that was not confirmed is not done twice': async (world) => {
    const store = await world.ready();
    await store.record([programme()]);
    // The first strict transaction commits, but the page is told that it was aborted.
    let lies = 1;
    const lying = (original: IDBDatabase['transaction']): IDBDatabase['transaction'] =>
      function transaction(this: IDBDatabase, ...args: Parameters<IDBDatabase['transaction']>) {
        const made = original.apply(this, args);
        if (args[1] !== 'readwrite' || lies === 0) return made;
        lies -= 1;
        const listen = made.addEventListener.bind(made);
        made.addEventListener = (type: string, ...rest: [EventListener]) => {
          if (type !== 'complete') listen(type === 'abort' ? 'complete' : type, ...rest);
        };
        return made;
      };
    const events = await replacing(IDBDatabase.prototype, 'transaction', lying, () =>
      store.record(runs(3)),
    );
    same(lies, 0);
    same(
      (await world.records()).map(({ id }) => id).slice(1),
      events.map(({ id }) => id),
    );
    await world.agrees(store);
  },

  'a newer version in another window: lets go at once and says so': async (world) => {
    const store = await world.ready();
    await store.record([run()]);
    const newer = await newerWindow(world);
    same(store.status.value, 'outdated');
    same(await kindOf(store.record([run()])), 'outdated');
    same(store.status.value, 'outdated');
    same(store.todaysRuns.value.length, 1);
    newer.close();
  },

  'a database of a newer version: says so, and leaves it alone': async (world) => {
    const newer = await newerWindow(world);
    const store = world.open();
    await until(() => store.status.value === 'outdated');
    same(store.problem.value?.kind, 'outdated');
    same(await kindOf(store.record([run()])), 'outdated');
    same(newer.version, 2);
    newer.close();
  },

  'an old window that does not let go is told of, until it does': async (world) => {
    const old = await openDB<LogSchema>(world.name, 1, { upgrade });
    const told: boolean[] = [];
    const events = {
      outdated: () => undefined,
      deleted: () => undefined,
      blocked: (isBlocked: boolean) => void told.push(isBlocked),
    };
    const connection = connect(world.name, events, 2);
    const version = connection.run(async (database) => database.version);
    await until(() => told.length > 0);
    same(told, [true]);
    old.close();
    same(await version, 2);
    same(told, [true, false]);
    connection.close();
  },

  'no storage at all': async (world) => {
    await replacing(indexedDB, 'open', refusing, async () => {
      const store = world.open();
      await until(() => store.status.value === 'failed');
      same(store.problem.value?.kind, 'unavailable');
      same(await kindOf(store.record([run()])), 'unavailable');
      store.close();
    });
  },

  'erased while a checkpoint is being kept, and restored: all is shown': (world) =>
    collectingIdleTasks(async (idle) => {
      const first = await world.ready();
      await first.record([programme(), ...runs(3)]);
      first.close();
      world.at += DAY;
      const store = await world.ready();
      const backup = new File([await store.backup()], 'log.arpeggiary');
      idle();
      await store.wipe();
      same(store.student.value.eventCount, 0);
      await store.restore(await store.previewBackup(backup));
      same(store.student.value.eventCount, 4);
      await world.agrees(store);
    }),

  'erased in one window, empty in the other, and both go on': async (world) => {
    const [store, other] = [await world.ready(), await world.ready()];
    await store.record(runs(3));
    await world.inStep(other);
    await store.wipe();
    await until(() => other.student.value.eventCount === 0);
    same([store.todaysRuns.value, other.todaysRuns.value], [[], []]);
    await other.record([run()]);
    await world.inStep(store);
    await world.inStep(other);
  },
};
