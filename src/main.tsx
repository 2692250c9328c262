import { computed } from '@preact/signals';
import { render } from 'preact';
import { App } from './app';
import { dayOf, now } from './clock';
import { dayListOf } from './day/day-list';
import { followLaunches } from './launch';
import { startPreferences } from './preferences';
import { keepSnapshot } from './snapshot/keep';
import { demoStore } from './store-context';
import { openStore, type Store } from './store/store';
import { startUpdates } from './update/start';

/**
 * Milliseconds for which the page may stay as it is, empty or with the picture of the last list: a list that comes at
 * once needs no frame without it before.
 */
const PATIENCE = { empty: 1000, picture: 5000 };

/** Resolves when all that the first screen shows has been read, or when that takes too long to wait for. */
function whenRead(store: Store, patience: number): Promise<void> {
  const list = dayListOf(store);
  const isRead = computed(() => store.status.value !== 'opening' && list.isRead.value);
  return new Promise((resolve) => {
    setTimeout(resolve, patience);
    isRead.subscribe((read) => {
      if (read) resolve();
    });
  });
}

async function start(): Promise<void> {
  const store = openStore({ name: 'arpeggiary', now, dayOf });
  void startPreferences(store);
  void startUpdates();
  const root = document.getElementById('app')!;
  await whenRead(store.current.value, PATIENCE[root.hasChildNodes() ? 'picture' : 'empty']);
  keepSnapshot(root, () => demoStore.value === null);
  render(<App store={store} />, root);
  followLaunches();
}

void start();
