import './page';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { askToPersist, askToPersistOnce, storageState } from '../../src/store/durability';
import { run, World } from './world';

const storage = {
  persisted: vi.fn<() => Promise<boolean>>(async () => false),
  persist: vi.fn<() => Promise<boolean>>(async () => true),
  estimate: async () => ({ usage: 4096, quota: 10_737_418_240 }),
};

const standalone = (matches: boolean) => vi.stubGlobal('matchMedia', () => ({ matches }));

let world: World;

beforeEach(() => {
  world = new World();
  vi.clearAllMocks();
  vi.stubGlobal('navigator', { storage });
  standalone(false);
});

afterEach(async () => {
  vi.unstubAllGlobals();
  await world.end();
});

describe('the state of storage is told honestly', () => {
  it('what is kept for good, what it takes, when it was last saved', async () => {
    const store = await world.ready();
    await store.record([run()]);
    expect(await storageState(store)).toEqual({
      isPersisted: false,
      bytes: 4096,
      lastBackup: null,
      isShortLived: false,
    });
    storage.persisted.mockResolvedValueOnce(true);
    await store.backup();
    expect(await storageState(store)).toMatchObject({
      isPersisted: true,
      lastBackup: '2026-11-25',
    });
  });

  it('in Safari it may be erased after a week, unless installed or kept for good', async () => {
    const store = await world.ready();
    vi.stubGlobal('GestureEvent', Event);
    expect(await storageState(store)).toMatchObject({ isShortLived: true });
    storage.persisted.mockResolvedValueOnce(true);
    expect(await storageState(store)).toMatchObject({ isShortLived: false });
    standalone(true);
    expect(await storageState(store)).toMatchObject({ isShortLived: false });
  });

  it('where the browser does not say', async () => {
    vi.stubGlobal('navigator', {});
    const store = await world.ready();
    expect(await storageState(store)).toMatchObject({ isPersisted: false, bytes: null });
    expect(await askToPersist()).toBe(false);
  });
});

it('the browser is asked once for a log, also after a restart', async () => {
  const store = await world.ready();
  await askToPersistOnce(store);
  await askToPersistOnce(await world.ready());
  expect(storage.persist).toHaveBeenCalledTimes(1);
});
