/**
 * The installed app keeps to one window (launch_handler in the manifest): a shortcut or a file opened while it is there
 * arrives here instead of loading a page. Chromium only, and not in TypeScript's DOM types yet.
 */
import { signal } from '@preact/signals';
import { say } from './parts/notice/notice';
import { go } from './route';
import { isBusy } from './update/update';

interface Launch {
  readonly targetURL?: string;
  readonly files?: readonly FileSystemFileHandle[];
}

interface LaunchQueue {
  setConsumer(consumer: (launch: Launch) => void): void;
}

/** The file that the system has handed to the app last; the screen that takes it sets it back. */
export const launchedFile = signal<File | null>(null);

/** Follows shortcuts and files to their screen, except while a run is open: that must not be lost to a slip of the finger. */
export function followLaunches(): void {
  const { launchQueue } = window as Window & { launchQueue?: LaunchQueue };
  launchQueue?.setConsumer(({ targetURL, files = [] }) => {
    const [handle] = files;
    if (handle !== undefined) {
      if (isBusy.value) say('A run is open. Open the file again when it is over.');
      else void open(handle);
      return;
    }
    if (targetURL === undefined || isBusy.value) return;
    const { hash } = new URL(targetURL);
    if (hash !== '') location.hash = hash;
  });
}

async function open(handle: FileSystemFileHandle): Promise<void> {
  try {
    launchedFile.value = await handle.getFile();
    go('receive');
  } catch {
    say('The file could not be opened: it may have been moved or deleted.');
  }
}
