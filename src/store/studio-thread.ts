/** Reads how all students stand as studio.ts does, but by a thread of its own. */
import type { Connection } from './open';
import type { Overview, StudioAsk, StudioOrder } from './studio';
// oxlint-disable-next-line import/default -- what the bundler makes of a worker: its address
import studioWorkerUrl from './studio-worker?worker&url';
import { Thread } from './thread';

export type Order = StudioOrder & { readonly database: string };

/** Rejects with a StoreError. */
export async function readStudio(
  _: Connection,
  { students, today, tell, over }: StudioAsk,
  database: string,
): Promise<void> {
  if (over.aborted) return;
  const thread = new Thread<Order, void, Overview>(studioWorkerUrl, 'studio');
  over.addEventListener('abort', () => thread.end());
  try {
    await thread.ask({ students, today, database }, tell);
  } catch (error) {
    if (!over.aborted) throw error;
  } finally {
    thread.end();
  }
}
