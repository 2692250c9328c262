import { trustedScriptUrl } from '../trusted';
import tickWorkerUrl from './tick-worker?worker&url';

/** Calls `onTick` about every 25 ms, in a hidden page too, until the returned function is called. */
export function startTicker(onTick: () => void): () => void {
  const worker = new Worker(trustedScriptUrl(tickWorkerUrl) as unknown as string, {
    type: 'module',
    name: 'tick',
  });
  worker.addEventListener('message', onTick);
  return () => {
    worker.removeEventListener('message', onTick);
    worker.terminate();
  };
}
