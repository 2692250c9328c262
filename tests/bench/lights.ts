/**
 * How long it takes from a key of a MIDI keyboard to its light, in the built app: from the time stamp of the message until
 * the frame has been drawn that shows it, on the staff and on the drawn keys, with and without the beat to be seen. And of
 * the microphone, without the app: how soon and how well notes light up.
 */
import { rmSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { expectedOf } from '../../shared/listening/expected';
import { type ItemId, itemOf, roundItems } from '../../shared/music/deck';
import { scoreOf } from '../../shared/music/score-of';
import { APP_PATH } from '../browser/app-path';
import { buildSite } from '../browser/build-site';
import { launchBrowser } from '../browser/chromium';
import { allowMidi, fakeMidi } from '../browser/midi';
import { prefer, toStand } from '../browser/on-stand';
import { startServer } from '../browser/server';
import { OPTIONS } from '../formats/scores';
import { benchLiveSound } from './live-sound';

const ITEMS: readonly ItemId[] = roundItems('d', 'right.4').map(({ id }) => id);
const NOTES = 150;
/** Milliseconds after which there will be no light. */
const LONGEST = 5000;
const PICTURES = ['staff', 'keys'] as const;
const BEATS = ['off', 'seen'] as const;

interface Times {
  /** Milliseconds until the frame with the light has been drawn. */
  readonly shown: readonly number[];
  /** Of them, until the page has done its own work. */
  readonly worked: readonly number[];
}

interface Strikes {
  readonly keys: readonly number[];
  readonly longest: number;
}

/** Strikes keys at moments that have nothing to do with the frames, and waits for the light of each. Runs in the page. */
async function strikeAll({ keys, longest }: Strikes): Promise<Times> {
  const shown: number[] = [];
  const worked: number[] = [];
  const stand = document.querySelector('[data-stand]')!;
  const { port1, port2 } = new MessageChannel();
  port1.start();
  for (const key of keys) {
    await new Promise((done) => {
      setTimeout(done, 60 + 60 * Math.random());
    });
    await new Promise<void>((done, fail) => {
      const timer = setTimeout(() => fail(new Error(`no light of key ${key}`)), longest);
      const struck = performance.now();
      const watcher = new MutationObserver((changes) => {
        if (!changes.some(({ target }) => (target as Element).closest('svg'))) return;
        watcher.disconnect();
        worked.push(performance.now() - struck);
        const tell = () => {
          shown.push(performance.now() - struck);
          clearTimeout(timer);
          done();
        };
        port1.addEventListener('message', tell, { once: true });
        // What is posted while a frame is made comes when it has been.
        // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a port's postMessage has no origin
        requestAnimationFrame(() => port2.postMessage(null));
      });
      watcher.observe(stand, { subtree: true, childList: true, attributes: true });
      window.fakeKeyboard.play([[0, 0x90, key, 64]]);
    });
    window.fakeKeyboard.play([[0, 0x80, key, 0]]);
  }
  return { shown, worked };
}

const share = (values: readonly number[], part: number): string =>
  values.toSorted((a, b) => a - b)[Math.floor(part * (values.length - 1))]!.toFixed(1);

async function openStand(
  browser: Browser,
  url: string,
  wish: Record<string, string>,
): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 1024, height: 768 },
    serviceWorkers: 'block',
  });
  // tsx keeps the names of functions by a helper that a page does not have.
  await context.addInitScript('globalThis.__name = (named) => named');
  await fakeMidi(context, 'granted');
  const page = await context.newPage();
  await page.goto(url);
  await page.getByRole('button', { name: 'Make today’s list' }).click();
  await page.locator('[data-ready="today"]').waitFor();
  await allowMidi(page);
  await prefer(page, { ear: 'midi', turner: 'player', ...wish });
  await toStand(page, ITEMS);
  await page.getByText('Listening to Test piano').waitFor();
  return page;
}

export async function benchLights(): Promise<void> {
  await benchKeyboard();
  benchLiveSound();
}

async function benchKeyboard(): Promise<void> {
  const { steps } = expectedOf(scoreOf(ITEMS.map(itemOf), { ...OPTIONS, pedal: false }));
  const keys = steps.flatMap((step) => step.map(({ key }) => key.midi)).slice(0, NOTES);
  const site = buildSite();
  const server = await startServer({ [APP_PATH]: site });
  const browser = await launchBrowser();
  try {
    for (const picture of PICTURES) {
      for (const beat of BEATS) {
        const page = await openStand(browser, `${server.origin}${APP_PATH}`, { picture, beat });
        await page.getByRole('button', { name: 'Begin' }).click();
        await page.locator('[data-playing="true"]').waitFor();
        // The count-in at 60 beats a minute.
        if (beat === 'seen') await page.waitForTimeout(5000);
        const { shown, worked } = await page.evaluate(strikeAll, { keys, longest: LONGEST });
        console.log(
          `from a key to its light, ${picture}, beat ${beat}: median ${share(shown, 0.5)} ms, 95 % within ${share(shown, 0.95)} ms (${shown.length} notes)`,
        );
        console.log(
          `  of it until the page has done its work: ${share(worked, 0.5)} ms, 95 % within ${share(worked, 0.95)} ms`,
        );
        await page.context().close();
      }
    }
  } finally {
    await browser.close();
    await server.kill();
    rmSync(site, { recursive: true });
  }
}
