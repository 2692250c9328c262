/** How safe the log is on this device. */
import type { Day } from '../../shared/log/events';
import { LAST_BACKUP } from './schema';
import type { Store } from './store';

export interface StorageState {
  /** Whether the browser has promised not to erase the log by itself when the device runs short of room. */
  readonly isPersisted: boolean;
  /** What all of the app takes, the program itself included; null where the browser does not say. */
  readonly bytes: number | null;
  readonly lastBackup: Day | null;
  /**
   * Whether the browser may erase the log after some days without a visit: Safari deletes what a page keeps after seven
   * days of use without one, unless the app was put on the Home Screen.
   */
  readonly isShortLived: boolean;
}

const ASKED = 'asked-to-persist';

/** Missing on pages without https. */
const storage = (): StorageManager | undefined => navigator.storage;

/** WebKit on Apple's systems, which is every browser on iOS and Safari on the Mac, is the only one with this event. */
const isSafari = (): boolean => 'GestureEvent' in globalThis;

const isInstalled = (): boolean => matchMedia('(display-mode: standalone)').matches;

export async function storageState(store: Store): Promise<StorageState> {
  const [isPersisted, estimate, lastBackup] = await Promise.all([
    storage()?.persisted(),
    // The quota that it names as well has little to do with the room that there is.
    storage()?.estimate(),
    store.kept(LAST_BACKUP),
  ]);
  return {
    isPersisted: isPersisted ?? false,
    bytes: estimate?.usage ?? null,
    lastBackup: typeof lastBackup === 'string' ? lastBackup : null,
    isShortLived: !isPersisted && isSafari() && !isInstalled(),
  };
}

/** Asks the browser to keep the log for good; Firefox asks the person. Whether it agreed. */
export async function askToPersist(): Promise<boolean> {
  return (await storage()?.persist()) ?? false;
}

/** The same, once for a log: to be called when a run has been saved, as nobody is to be asked before there is one. */
export async function askToPersistOnce(store: Store): Promise<void> {
  if ((await store.kept(ASKED)) === true) return;
  await store.keep(ASKED, true);
  await askToPersist();
}
