/** The invented student in a database of its own, made anew for each look and deleted afterwards. */
import { type BackupEntry, previewOf } from '../../shared/formats/backup';
import type { Day, LogEvent } from '../../shared/log/events';
import { dayOf, now } from '../clock';
import { openStore, type Store } from '../store/store';
import { inventHistory } from './history';

const NAME = 'arpeggiary-demo';
/** Always the same, so that the history is; no real student or device has them. */
const STUDENT = '00000000-0000-4000-8000-00000000000a';
const DEVICE = '00000000-0000-4000-8000-00000000000b';
/** Hour at which practice begins. */
const AFTER_SCHOOL = 16;

const startOf = (day: Day): number => new Date(`${day}T${AFTER_SCHOOL}:00`).getTime();

/** Lets the page draw and answer between two pieces of work. */
const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

async function invent(): Promise<readonly LogEvent[]> {
  const events: LogEvent[] = [];
  const days = inventHistory({ today: dayOf(now()), startOf, student: STUDENT, device: DEVICE });
  for (const day of days) {
    events.push(...day);
    await breathe();
  }
  return events;
}

const entryOf = (event: LogEvent): BackupEntry => ({
  id: event.id,
  student: event.student,
  event,
  decoded: { outcome: 'ok', event },
});

/** A store with the history of the invented student; closing it deletes all. Rejects with a StoreError. */
export async function openDemo(): Promise<Store> {
  const store = openStore({ name: NAME, now, dayOf });
  const events = await invent();
  // What an earlier look has left behind if its tab was closed.
  await store.wipe();
  const made = new Date(now()).toISOString();
  const entries = events.map(entryOf);
  const here = { events: new Map(), names: new Map() };
  await store.restore(previewOf({ made, entries, after: null }, here));
  return {
    ...store,
    close: () => void store.wipe().finally(store.close),
  };
}
