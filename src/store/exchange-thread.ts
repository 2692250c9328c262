/** Takes files in as exchange.ts does, but by a thread of its own, so that the page stays alive. */
import type { BackupPreview } from '../../shared/formats/backup';
import { trustedScriptUrl } from '../trusted';
import { StoreError } from './errors';
import { restore as restoreHere } from './exchange';
import type { Answer, Order } from './exchange-orders';
// oxlint-disable-next-line import/default -- what the bundler makes of a worker: its address
import exchangeWorkerUrl from './exchange-worker?worker&url';
import { errorOf } from './failure';
import type { Connection } from './open';

let orders = 0;

/** What an order says without its number. */
type Wish = { readonly do: 'restore' } | { readonly do: 'preview'; database: string; file: Blob };

function ask(worker: Worker, wish: Wish): Promise<BackupPreview | null> {
  const number = (orders += 1);
  return new Promise((resolve, reject) => {
    const over = new AbortController();
    const hear = ({ data: answer }: MessageEvent<Answer>) => {
      if (answer.number !== number) return;
      over.abort();
      if (answer.outcome === 'done') resolve(answer.preview);
      else reject(errorOf(answer.failure));
    };
    const giveUp = () => {
      over.abort();
      reject(new StoreError('failed'));
    };
    worker.addEventListener('message', hear, { signal: over.signal });
    worker.addEventListener('error', giveUp, { signal: over.signal });
    const order: Order = { ...wish, number };
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker's postMessage has no origin
    worker.postMessage(order);
  });
}

interface Held {
  readonly worker: Worker;
  /** Null until the file has been read. */
  preview: BackupPreview | null;
}

/** Which thread holds what a preview shows; null if another file has been opened in its place. */
const threads = new WeakMap<BackupPreview, Worker | null>();
const lastOf = new WeakMap<Connection, Held>();

/** What taking a file in would do. Rejects with a BackupError or a StoreError. */
export async function readBackup(
  connection: Connection,
  file: Blob,
  database: string,
): Promise<BackupPreview> {
  const before = lastOf.get(connection);
  before?.worker.terminate();
  if (before?.preview) threads.set(before.preview, null);
  const worker = new Worker(trustedScriptUrl(exchangeWorkerUrl), {
    type: 'module',
    name: 'exchange',
  });
  const held: Held = { worker, preview: null };
  lastOf.set(connection, held);
  const preview = (await ask(worker, { do: 'preview', database, file }))!;
  held.preview = preview;
  threads.set(preview, worker);
  return preview;
}

/** Adds what the log lacks, and mends what it has damaged, in one transaction. */
export async function restore(connection: Connection, preview: BackupPreview): Promise<void> {
  const worker = threads.get(preview);
  if (worker === undefined) return restoreHere(connection, preview);
  if (worker === null) throw new StoreError('failed', { detail: 'another file was opened' });
  await ask(worker, { do: 'restore' });
}
