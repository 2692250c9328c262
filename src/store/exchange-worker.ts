/**
 * The thread in which files are decoded and taken in, as that is long work. What was decoded stays here until it is taken
 * in; the page gets only what it shows of it.
 */
import type { BackupPreview } from '../../shared/formats/backup';
import { readBackup, restore } from './exchange';
import type { Order } from './exchange-thread';
import { connectInThread, work } from './thread-work';

/** What was shown last and can be taken in. */
let offered: (() => Promise<void>) | null = null;

work(async (order: Order): Promise<BackupPreview | null> => {
  if (order.do === 'restore') {
    await offered?.();
    offered = null;
    return null;
  }
  const connection = connectInThread(order.database);
  const preview = await readBackup(connection, order.file);
  offered = () => restore(connection, preview);
  return { ...preview, fresh: [] };
});
