/** Reads how all students stand as studio.ts does, but by a thread of its own, so that the page stays alive. */
import { trustedScriptUrl } from '../trusted';
import { StoreError } from './errors';
import { errorOf } from './failure';
import type { Connection } from './open';
import type { StudioAsk } from './studio';
import type { StudioAnswer, StudioWish } from './studio-orders';
// oxlint-disable-next-line import/default -- what the bundler makes of a worker: its address
import studioWorkerUrl from './studio-worker?worker&url';

/** Rejects with a StoreError. */
export function readStudio(
  _: Connection,
  { students, today, tell, over }: StudioAsk,
  database: string,
): Promise<void> {
  const worker = new Worker(trustedScriptUrl(studioWorkerUrl), { type: 'module', name: 'studio' });
  return new Promise((resolve, reject) => {
    const end = (settle: () => void) => {
      worker.terminate();
      settle();
    };
    over.addEventListener('abort', () => end(resolve));
    worker.addEventListener('message', ({ data: answer }: MessageEvent<StudioAnswer>) => {
      if (answer.outcome === 'read') tell(answer.overview);
      else if (answer.outcome === 'done') end(resolve);
      else end(() => reject(errorOf(answer.failure)));
    });
    worker.addEventListener('error', () => end(() => reject(new StoreError('failed'))));
    const wish: StudioWish = { students, today, database };
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker's postMessage has no origin
    worker.postMessage(wish);
  });
}
