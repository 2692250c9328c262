/**
 * New versions of the app: found by themselves, taken only when the person says so, and never in the middle of a run,
 * in this tab or another one. All tabs go over together, as one worker serves them all.
 */
import { computed, effect, signal, type ReadonlySignal } from '@preact/signals';
import type { Workbox } from 'workbox-window';

const HOUR = 3_600_000;
/** Held (shared) by each tab with a run open; the new version waits until no tab holds it. */
const RUN_LOCK = 'arpeggiary run open';

/** The play screen sets this while a run or an unrated round is open. */
export const isBusy = signal(false);

/** True from the moment at which the app is first stored on this device; the notice sets it back. */
export const offlineReady = signal(false);

const waiting = signal(false);
const postponed = signal(false);
const asked = signal(false);

/** True when a new version waits and this tab can talk about it. */
export const updateWaiting: ReadonlySignal<boolean> = computed(
  () => waiting.value && !postponed.value && !isBusy.value,
);

/** True after applyUpdate() until the page reloads: longer than a moment only while another tab has a run open. */
export const updateAsked: ReadonlySignal<boolean> = asked;

let worker: Pick<Workbox, 'messageSkipWaiting'> | undefined;

/** Goes over to the waiting version as soon as no tab has a run open; then every tab reloads. */
export async function applyUpdate(): Promise<void> {
  asked.value = true;
  await navigator.locks.request(RUN_LOCK, () => {
    asked.value = false;
    // A run was begun here while another tab was waited for: the offer comes back after it.
    if (!isBusy.value) worker?.messageSkipWaiting();
  });
}

/** Hides the offer until the page is loaded again. The new version starts by itself once all tabs have been closed. */
export function postponeUpdate(): void {
  postponed.value = true;
}

/** What followWorker needs of the page; passed in for the tests. */
export interface Page {
  /** Whether a worker served this page when it loaded. */
  readonly hadController: boolean;
  readonly reload: () => void;
}

/** Ties the signals to the worker's events. Must be called before register(), or an event may be missed. */
export function followWorker(workbox: Workbox, page: Page): void {
  worker = workbox;
  const controlled = signal(false);
  workbox.addEventListener('waiting', () => (waiting.value = true));
  workbox.addEventListener('activated', (event) => {
    if (event.isUpdate !== true && event.isExternal !== true) offlineReady.value = true;
  });
  // Reported in every tab, whichever asked. Without a worker at load there is nothing old to get rid of.
  workbox.addEventListener('controlling', () => (controlled.value = page.hadController));
  let isReloading = false;
  effect(() => {
    if (!controlled.value || isBusy.value || isReloading) return;
    isReloading = true;
    page.reload();
  });
  effect(holdLockWhileBusy);
}

function holdLockWhileBusy(): (() => void) | undefined {
  if (!isBusy.value) return undefined;
  const { promise, release } = gate();
  void navigator.locks.request(RUN_LOCK, { mode: 'shared' }, () => promise);
  return release;
}

function gate(): { promise: Promise<void>; release: () => void } {
  let release!: () => void;
  const promise = new Promise<void>((resolve) => {
    release = resolve;
  });
  return { promise, release };
}

/**
 * Looks for a new version whenever the page comes to the front, at most once an hour. Reading `registration.waiting` as
 * well finds a version that another tab fetched: Workbox reports only the first one that comes later than a minute.
 */
export function lookWhenVisible(workbox: Workbox, registration: ServiceWorkerRegistration): void {
  let last = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible') return;
    if (registration.waiting !== null) waiting.value = true;
    if (Date.now() - last < HOUR) return;
    last = Date.now();
    // Without a network there is no new version to find; the next look may have one.
    workbox.update().catch(() => undefined);
  });
}
