/**
 * What the system hands to the installed app: shortcuts and files. The app keeps to one window (launch_handler in the
 * manifest), so what is opened while it is there arrives here instead of loading a page. Chromium only, and the queue is
 * not in TypeScript's DOM types yet. What is shared to the app loads the page.
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
  if (location.search === '?shared') void openShared();
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
    show(await handle.getFile());
  } catch {
    say('The file could not be opened: it may have been moved or deleted.');
  }
}

/** A recording goes where it is judged, anything else where a record or a programme is taken in. */
function show(file: File): void {
  launchedFile.value = file;
  go(/\.midi?$/i.test(file.name) || file.type.startsWith('audio/') ? 'recording' : 'receive');
}

/** What came from the system's share sheet: the worker has kept the form with the file (service-worker/sw.ts). */
async function openShared(): Promise<void> {
  // Loaded again, the page is not to look for it once more.
  history.replaceState(null, '', location.pathname + location.hash);
  const scope = new URL('.', location.href).href;
  try {
    const form = await (await caches.match(`${scope}shared`))?.formData();
    const file = form?.get('file');
    // A form whose file was left empty has one without a name.
    if (file instanceof File && file.name !== '') show(file);
    else say('No file came with what was shared. Save it on this device, and open it here.');
  } catch {
    say('The shared file could not be opened. Save it on this device, and open it here.');
  } finally {
    await caches.delete(`shared-${scope}`);
  }
}
