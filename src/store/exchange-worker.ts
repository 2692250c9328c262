/**
 * The thread in which files are decoded and taken in, as that is long work. What was decoded stays here until it is taken
 * in; the page gets only what it shows of it.
 */
import type { BackupPreview } from '../../shared/formats/backup';
import { readBackup, restore } from './exchange';
import type { Answer, Order } from './exchange-orders';
import { failureOf } from './failure';
import { connect } from './open';

const nothing = () => undefined;

/** What was shown last and can be taken in. */
let offered: (() => Promise<void>) | null = null;

async function follow(order: Order): Promise<BackupPreview | null> {
  if (order.do === 'restore') {
    await offered?.();
    offered = null;
    return null;
  }
  const events = { outdated: nothing, blocked: nothing, deleted: nothing };
  const connection = connect(order.database, events);
  const preview = await readBackup(connection, order.file);
  offered = () => restore(connection, preview);
  return { ...preview, fresh: [] };
}

function answer(given: Answer): void {
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker's postMessage has no origin
  postMessage(given);
}

addEventListener('message', ({ data: order }: MessageEvent<Order>) => {
  const { number } = order;
  follow(order).then(
    (preview) => answer({ number, outcome: 'done', preview }),
    (error: unknown) => answer({ number, outcome: 'failed', failure: failureOf(error) }),
  );
});
