import type { Workbox } from 'workbox-window';
import { beforeEach, expect, test, vi } from 'vitest';

type Update = typeof import('../../src/update/update');

let update: Update;
let reload: ReturnType<typeof vi.fn<() => void>>;
let messageSkipWaiting: ReturnType<typeof vi.fn<() => void>>;
let emit: (type: string, event?: object) => void;
/** Lets another tab begin a run, and end it. */
let otherTab: { begin(): void; end(): void };

/** Web Locks as far as they are used: shared holders keep an exclusive one waiting, and all that come after it. */
function fakeLocks() {
  const held = new Set<Promise<unknown>>();
  let exclusive: Promise<unknown> = Promise.resolve();
  const request = (_name: string, ...rest: readonly unknown[]): Promise<unknown> => {
    const action = rest.at(-1) as () => Promise<void> | void;
    if (rest.length === 1) {
      exclusive = Promise.all(held).then(action);
      return exclusive;
    }
    const holding = exclusive.then(action);
    held.add(holding);
    return holding.then(() => held.delete(holding));
  };
  return { request };
}

function load(hadController: boolean): void {
  const listeners = new Map<string, (event: object) => void>();
  emit = (type, event = {}) => listeners.get(type)!(event);
  update.followWorker(
    {
      addEventListener: (type: string, listener: (event: object) => void) =>
        listeners.set(type, listener),
      messageSkipWaiting,
    } as unknown as Workbox,
    { hadController, reload },
  );
}

beforeEach(async () => {
  vi.resetModules();
  const locks = fakeLocks();
  vi.stubGlobal('navigator', { locks });
  const { promise, resolve } = gate();
  otherTab = {
    begin: () => void locks.request('run', { mode: 'shared' }, () => promise),
    end: resolve,
  };
  reload = vi.fn<() => void>();
  messageSkipWaiting = vi.fn<() => void>();
  update = await import('../../src/update/update');
});

function gate() {
  let resolve!: () => void;
  const promise = new Promise<void>((done) => {
    resolve = done;
  });
  return { promise, resolve };
}

test('a first visit says that the app is stored, and does not reload', async () => {
  load(false);
  emit('activated', { isUpdate: false });
  emit('controlling');
  expect(update.offlineReady.value).toBe(true);
  expect(reload).not.toHaveBeenCalled();
});

test('an update says nothing about being stored', async () => {
  load(true);
  emit('activated', { isUpdate: true });
  emit('activated', { isExternal: true });
  expect(update.offlineReady.value).toBe(false);
});

test('a new version is offered, but not while a run is open, and not again once put off', async () => {
  load(true);
  update.isBusy.value = true;
  emit('waiting');
  expect(update.updateWaiting.value).toBe(false);
  update.isBusy.value = false;
  expect(update.updateWaiting.value).toBe(true);
  update.postponeUpdate();
  expect(update.updateWaiting.value).toBe(false);
});

test('a tab in which a run is open reloads after it, once', async () => {
  load(true);
  update.isBusy.value = true;
  emit('controlling');
  expect(reload).not.toHaveBeenCalled();
  update.isBusy.value = false;
  expect(reload).toHaveBeenCalledTimes(1);
  emit('controlling');
  update.isBusy.value = true;
  update.isBusy.value = false;
  expect(reload).toHaveBeenCalledTimes(1);
});

test('the new version waits for the run in another tab', async () => {
  load(true);
  emit('waiting');
  otherTab.begin();
  const applied = update.applyUpdate();
  await Promise.resolve();
  expect(messageSkipWaiting).not.toHaveBeenCalled();
  expect(update.updateAsked.value).toBe(true);
  otherTab.end();
  await applied;
  expect(messageSkipWaiting).toHaveBeenCalledTimes(1);
});

test('a run begun while another tab was waited for is not cut off', async () => {
  load(true);
  emit('waiting');
  otherTab.begin();
  const applied = update.applyUpdate();
  update.isBusy.value = true;
  otherTab.end();
  await applied;
  expect(messageSkipWaiting).not.toHaveBeenCalled();
  update.isBusy.value = false;
  expect(update.updateWaiting.value).toBe(true);
});
