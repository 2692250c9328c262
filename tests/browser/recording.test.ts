/** Files that come to the installed app: by the system's share sheet, by opening them, by dropping, and bad ones. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { LARGEST_MIDI_FILE } from '../../shared/formats/smf-reader';
import { expectedOf } from '../../shared/listening/expected';
import { type ItemId, itemOf } from '../../shared/music/deck';
import { scoreOf } from '../../shared/music/score-of';
import { OPTIONS } from '../formats/scores';
import { perform, seededRandom } from '../listening/performer';
import { installed, serveApp } from './app';
import { browseApp } from './browse';
import { midiFileOf } from './midi-file';
import { begin, show } from './steps';

const takeOf = (item: ItemId) =>
  perform(expectedOf(scoreOf([itemOf(item)], { ...OPTIONS, pedal: false })), {
    random: seededRandom(4),
    tempo: 320,
    spread: 0.004,
  });
const PRACTICE = Buffer.from(
  midiFileOf([takeOf('f.major-53.left.2'), takeOf('c.major-53.right.2')]),
);
const FOUND = '2 runs found.';

const app = browseApp();

/** A student's page, which its worker answers for. */
async function openApp(url = app.url): Promise<Page> {
  const { page } = await app.newDevice({ url, reducedMotion: 'reduce' });
  await installed(page);
  await begin(page);
  return page;
}

interface Sent {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

const midi = (name: string, buffer = PRACTICE): Sent => ({ name, mimeType: 'audio/midi', buffer });

/** The address of the app that a page shows. */
const appOf = (page: Page): string => page.url().replace(/#.*/, '');

/** What the system does when a file is shared to the app: it loads the page by posting a form. */
async function share(from: Page, file: Sent | null): Promise<Page> {
  const page = await from.context().newPage();
  await page.setContent(
    `<form action="${appOf(from)}shared" method="post" enctype="multipart/form-data">
      <input type="file" name="file"><input type="text" name="title" value="a title"><button>Share</button>
    </form>`,
  );
  if (file !== null) await page.locator('[type="file"]').setInputFiles(file);
  await page.getByRole('button', { name: 'Share' }).click();
  await page.locator('#app h1').waitFor();
  return page;
}

/** What the system does when a file is opened with the app: no test can install it, so the queue is handed in. */
async function launch(page: Page, { name, mimeType, buffer }: Sent): Promise<void> {
  await page.addInitScript(
    ([text, fileName, type]) => {
      const bytes = Uint8Array.from(atob(text!), (letter) => letter.charCodeAt(0));
      const handle = {
        getFile: () => Promise.resolve(new File([bytes], fileName!, { type: type! })),
      };
      const setConsumer = (consumer: (launch: unknown) => void) => consumer({ files: [handle] });
      Object.defineProperty(window, 'launchQueue', { value: { setConsumer } });
    },
    [buffer.toString('base64'), name, mimeType] as const,
  );
  await page.reload();
}

const drop = (page: Page, { name, mimeType, buffer }: Sent) =>
  page.evaluate(
    ([text, fileName, type]) => {
      const bytes = Uint8Array.from(atob(text!), (letter) => letter.charCodeAt(0));
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([bytes], fileName!, { type: type! }));
      const field = document.querySelector('input[type="file"]')!.parentElement!;
      for (const kind of ['dragover', 'drop']) {
        field.dispatchEvent(new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true }));
      }
    },
    [buffer.toString('base64'), name, mimeType] as const,
  );

describe('the share sheet', () => {
  test('brings a recording to be judged, once, without the host', async () => {
    const host = await serveApp();
    const installedPage = await openApp(host.url);
    // The host is dead: nothing can be sent, and the worker answers all the same.
    await host.kill();
    const page = await share(installedPage, midi('practice.mid'));
    await page.getByText(FOUND).waitFor();
    expect(page.url()).toBe(`${host.url}#/recording`);
    // Only the files of the app are kept.
    expect(await page.evaluate(() => caches.keys())).toHaveLength(1);
    await page.reload();
    await page.getByLabel(/MIDI file/).waitFor();
    expect(await page.getByText(FOUND).count()).toBe(0);
  });

  test('brings the record of a student to be taken in, and says so where no file came', async () => {
    const page = await openApp();
    await show(page, '#/settings');
    const [saved] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save a backup file' }).click(),
    ]);
    const buffer = readFileSync(await saved.path());
    const name = saved.suggestedFilename();
    const other = await share(page, { name, mimeType: 'application/octet-stream', buffer });
    await other.getByRole('heading', { name: 'Take this in?' }).waitFor();
    expect(other.url()).toBe(`${app.url}#/receive`);

    const empty = await share(page, null);
    await empty.getByText('No file came with what was shared.').waitFor();
  });
});

test('a recording that is opened with the app is judged', async () => {
  const page = await openApp();
  await launch(page, midi('Practice.MIDI'));
  await page.getByText(FOUND).waitFor();
  expect(page.url()).toBe(`${app.url}#/recording`);
});

test('a dropped file is read; a bad one says what is wrong and what to do, and the next is read as ever', async () => {
  const page = await openApp();
  await show(page, '#/recording');
  await page.getByLabel(/MIDI file/).waitFor();
  for (const [buffer, told] of [
    [Buffer.from('Dear teacher'), /not a MIDI file.*Choose another/],
    [PRACTICE.subarray(0, 200), /damaged.*Choose another/],
    [Buffer.alloc(LARGEST_MIDI_FILE + 1, 'MThd'), /too large.*Choose another/],
    [Buffer.alloc(0), /not a MIDI file.*Choose another/],
  ] as const) {
    await drop(page, midi('practice.mid', buffer));
    await page.getByRole('alert').getByText(told).waitFor();
    await drop(page, midi('practice.mid'));
    await page.getByText(FOUND).waitFor();
    expect(await page.getByRole('alert').count()).toBe(0);
  }
});
