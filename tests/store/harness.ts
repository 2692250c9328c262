/**
 * The page that tests/browser/store.test.ts opens in a real browser (built by tests/browser/harness.ts): it runs the
 * contract, and has the store do what only a real browser can spoil. All on `window.storeHarness`.
 */
import { eventLines, headerLine } from '../../shared/formats/backup';
import type { EventBody } from '../../shared/log/events';
import { longLog } from '../bench/long-log';
import { recordOf } from '../../src/store/schema';
import type { StoreError } from '../../src/store/errors';
import { contract } from './contract';
import { until } from './check';
import { run, World } from './world';

export interface Result {
  readonly name: string;
  readonly ok: boolean;
  readonly error: string;
}

/** Keeps its name over a restart of the browser, unlike those of the contract. */
const lasting = new World('arpeggiary-lasting');

async function keepPromise([name, promise]: (typeof entries)[number]): Promise<Result> {
  const world = new World();
  try {
    await promise(world);
    await world.end();
    return { name, ok: true, error: '' };
  } catch (error) {
    return { name, ok: false, error: String(error) };
  }
}

const entries = Object.entries(contract);

async function runContract(): Promise<readonly Result[]> {
  const results: Result[] = [];
  for (const entry of entries) results.push(await keepPromise(entry));
  return results;
}

/** Text that no browser can compress. */
function noise(length: number): string {
  const bytes = crypto.getRandomValues(new Uint8Array(length));
  return Array.from(bytes, (byte) => String.fromCharCode(0x4e00 + byte * 64)).join('');
}

const remark = (): EventBody => ({ kind: 'remark', about: null, text: noise(2000) });

/** Records long remarks until the store says no. What it said, and how many it had confirmed. */
async function recordUntilFull() {
  const store = await lasting.ready();
  let confirmed = 0;
  for (;;) {
    try {
      confirmed += (await store.record(Array.from({ length: 100 }, remark))).length;
    } catch (error) {
      const { name, kind, message } = error as StoreError;
      return { name, kind, message, confirmed, shown: store.student.value.remarks.length };
    }
  }
}

/** Records run after run and says each id on the console once it is confirmed, until the browser is killed. */
async function recordForEver(): Promise<never> {
  const store = await lasting.ready();
  for (;;) {
    const [event] = await store.record([run()]);
    console.log('confirmed', event!.id);
  }
}

/** Takes in the file of a long log, and says on the console when that begins. */
async function takeIn(count: number): Promise<void> {
  const events = longLog(count);
  const kept = events.map((event) => ({ id: event.id, student: event.student, event }));
  const store = await lasting.ready();
  const file = new File([headerLine(0, kept.length), eventLines(kept)], 'log.arpeggiary');
  const preview = await store.previewBackup(file);
  console.log('taking in');
  await store.restore(preview);
}

/** Fills the database with a long log, as a restore would leave it. */
async function fill(count: number): Promise<void> {
  const events = longLog(count);
  (await lasting.ready()).close();
  await lasting.raw(async (database) => {
    const transaction = database.transaction(['events', 'kept'], 'readwrite');
    const { student } = events[0]!;
    await transaction.objectStore('kept').put(student, 'log.student');
    for (const [i, event] of events.entries()) {
      const record = recordOf({ id: event.id, student, event }, i + 1);
      if (i % 1000 < 999) void transaction.objectStore('events').add(record);
      else await transaction.objectStore('events').add(record);
    }
    await transaction.done;
  });
}

/** Milliseconds from opening the store until it is ready. */
async function timeToOpen(at: number): Promise<number> {
  lasting.at = at;
  const start = performance.now();
  const store = lasting.open();
  await until(() => store.status.value === 'ready');
  const time = performance.now() - start;
  await until(async () => (await lasting.checkpoint()) !== null);
  store.close();
  return time;
}

const storeHarness = {
  runContract,
  recordUntilFull,
  recordForEver,
  takeIn,
  fill,
  timeToOpen,
  records: () => lasting.records(),
  end: () => lasting.end(),
};

declare global {
  interface Window {
    storeHarness: typeof storeHarness;
  }
}

window.storeHarness = storeHarness;
