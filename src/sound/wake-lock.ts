import { signal, type ReadonlySignal } from '@preact/signals';

export interface WakeLock {
  /** 'off': the screen may go dark, because the device refused (low battery, old browser) or the page is hidden. */
  readonly state: ReadonlySignal<'asked' | 'on' | 'off'>;
  release(): void;
}

/**
 * Keeps the screen lit until `release`. The system takes the lock away when the page is hidden, so it is asked for again
 * when the page comes back. A refusal is no error: it shows in `state`.
 */
export function keepScreenLit(): WakeLock {
  const state = signal<'asked' | 'on' | 'off'>('asked');
  let sentinel: WakeLockSentinel | null = null;
  let isWanted = true;

  const ask = async () => {
    state.value = 'asked';
    try {
      sentinel = await navigator.wakeLock.request('screen');
      sentinel.addEventListener('release', () => {
        state.value = 'off';
      });
      // It may have been given up while the answer was on its way.
      if (isWanted) state.value = 'on';
      else await sentinel.release();
    } catch {
      state.value = 'off';
    }
  };
  const onVisibility = () => {
    if (!document.hidden && state.value === 'off') void ask();
  };

  document.addEventListener('visibilitychange', onVisibility);
  void ask();
  return {
    state,
    release: () => {
      isWanted = false;
      document.removeEventListener('visibilitychange', onVisibility);
      void sentinel?.release();
      state.value = 'off';
    },
  };
}
