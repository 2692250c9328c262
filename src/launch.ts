/**
 * The installed app keeps to one window (launch_handler in the manifest): a shortcut opened while it is there arrives
 * here instead of loading a page. Chromium only, and not in TypeScript's DOM types yet.
 */
import { isBusy } from './update/update';

interface LaunchQueue {
  setConsumer(consumer: (launch: { readonly targetURL?: string }) => void): void;
}

/** Follows shortcuts to their screen, except while a run is open: that must not be lost to a slip of the finger. */
export function followLaunches(): void {
  const { launchQueue } = window as Window & { launchQueue?: LaunchQueue };
  launchQueue?.setConsumer(({ targetURL }) => {
    if (targetURL === undefined || isBusy.value) return;
    const { hash } = new URL(targetURL);
    if (hash !== '') location.hash = hash;
  });
}
