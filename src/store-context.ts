/** Which store the screens work on: the person's own, or that of an invented student while one looks round. */
import { signal, type ReadonlySignal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { openDemo } from './lazy';
import { go } from './route';
import type { Store, Students } from './store/store';

export const StoreContext = createContext<Store | null>(null);

/** The students of this device; null while one looks round, where there is only the invented one. */
export const StudentsContext = createContext<Students | null>(null);

/** The store of the screen; only below the shell. */
export function useStore(): Store {
  const store = useContext(StoreContext);
  if (store === null) throw new Error('no store above this component');
  return store;
}

const demo = signal<Store | null>(null);
export const demoStore: ReadonlySignal<Store | null> = demo;

/** Shows the invented student. Rejects if it cannot be loaded. */
export async function lookRound(): Promise<void> {
  demo.value = await openDemo();
  go('today');
}

export function leaveDemo(): void {
  demo.value?.close();
  demo.value = null;
  go('today');
}
