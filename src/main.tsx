import './styles/type.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/print.css';
import { computed } from '@preact/signals';
import { render } from 'preact';
import { App } from './app';
import { dayOf, now } from './clock';
import { dayListOf } from './day/day-list';
import { followLaunches } from './launch';
import { startPreferences } from './preferences';
import { openStore, type Store } from './store/store';
import { startUpdates } from './update/start';

/** Milliseconds for which the page may stay empty: a list that comes at once needs no frame without it before. */
const PATIENCE = 1000;

/** Resolves when all that the first screen shows has been read, or when that takes too long to wait for. */
function whenRead(store: Store): Promise<void> {
  const list = dayListOf(store);
  const isRead = computed(() => store.status.value !== 'opening' && list.isRead.value);
  return new Promise((resolve) => {
    setTimeout(resolve, PATIENCE);
    isRead.subscribe((read) => {
      if (read) resolve();
    });
  });
}

async function start(): Promise<void> {
  const store = openStore({ name: 'arpeggiary', now, dayOf });
  void startPreferences(store);
  void startUpdates();
  await whenRead(store);
  render(<App store={store} />, document.getElementById('app')!);
  followLaunches();
}

void start();
