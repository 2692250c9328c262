/**
 * The browser's offer to install the app, kept until the person asks for it in the settings. Chromium only; other
 * browsers install from a menu of their own. Not in TypeScript's DOM types.
 */
import { signal, type ReadonlySignal } from '@preact/signals';

interface InstallEvent extends Event {
  prompt(): Promise<{ readonly outcome: 'accepted' | 'dismissed' }>;
}

const offered = signal<InstallEvent | null>(null);

/** Whether `install` would show the browser's question. */
export const canInstall: ReadonlySignal<unknown> = offered;

/** Catches the offer, which comes once and early; to be called when the page starts. */
export function followInstallOffer(): void {
  addEventListener('beforeinstallprompt', (event) => {
    // Without this some browsers put a banner over the page.
    event.preventDefault();
    offered.value = event as InstallEvent;
  });
  addEventListener('appinstalled', () => {
    offered.value = null;
  });
}

/** Shows the browser's question; in a user's gesture. It can be asked only once. */
export async function install(): Promise<void> {
  const event = offered.value;
  offered.value = null;
  await event?.prompt();
}
