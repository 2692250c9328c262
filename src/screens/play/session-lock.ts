import { useEffect, useState } from 'preact/hooks';

export type SessionLock = 'asking' | 'held' | 'elsewhere';

const LOCK = 'arpeggiary session';

/**
 * One session at a time: whoever comes second is told so, and gets the lock as soon as the other one is left. Released
 * by the browser when the page is closed or dies.
 */
export function useSessionLock(): SessionLock {
  const [state, setState] = useState<SessionLock>('asking');
  useEffect(() => {
    const leaving = new AbortController();
    let release = (): void => undefined;
    const hold = () => {
      setState('held');
      return new Promise<void>((resolve) => {
        release = resolve;
        if (leaving.signal.aborted) resolve();
      });
    };
    void (async () => {
      const wasFree = await navigator.locks.request(LOCK, { ifAvailable: true }, async (lock) => {
        if (lock === null || leaving.signal.aborted) return lock !== null;
        await hold();
        return true;
      });
      if (wasFree || leaving.signal.aborted) return;
      setState('elsewhere');
      await navigator.locks
        .request(LOCK, { signal: leaving.signal }, hold)
        // Only leaving this screen ends the waiting.
        .catch(() => undefined);
    })();
    return () => {
      leaving.abort();
      release();
    };
  }, []);
  return state;
}
