/** Takes files in as exchange.ts does, but by a thread of its own. */
import type { BackupPreview } from '../../shared/formats/backup';
import { restore as restoreHere } from './exchange';
// oxlint-disable-next-line import/default -- what the bundler makes of a worker: its address
import exchangeWorkerUrl from './exchange-worker?worker&url';
import type { Connection } from './open';
import { Thread } from './thread';

export type Order =
  | { readonly do: 'preview'; readonly database: string; readonly file: Blob }
  | { readonly do: 'restore' };

type ExchangeThread = Thread<Order, BackupPreview | null>;

/** Which thread holds what a preview shows, and which one was begun last. */
const threads = new WeakMap<BackupPreview, ExchangeThread>();
const lastOf = new WeakMap<Connection, ExchangeThread>();

/** What taking a file in would do. Rejects with a BackupError or a StoreError. */
export async function readBackup(
  connection: Connection,
  file: Blob,
  database: string,
): Promise<BackupPreview> {
  lastOf.get(connection)?.end('another file was opened');
  const thread: ExchangeThread = new Thread(exchangeWorkerUrl, 'exchange');
  lastOf.set(connection, thread);
  const preview = (await thread.ask({ do: 'preview', database, file }))!;
  threads.set(preview, thread);
  return preview;
}

/** Adds what the log lacks, and mends what it has damaged, in one transaction. */
export async function restore(connection: Connection, preview: BackupPreview): Promise<void> {
  const thread = threads.get(preview);
  if (thread === undefined) return restoreHere(connection, preview);
  await thread.ask({ do: 'restore' });
}
