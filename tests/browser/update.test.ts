/** One release after another, seen by people who have the app open. */
import { join } from 'node:path';
import { writeFileSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { openInstalled, serveApp, type AppServer } from './app';
import { APP_PATH } from './app-path';
import { launchBrowser } from './chromium';
import { deployRelease, filesToKeep, type Deploy } from './deploy';

let first: Deploy;
let second: Deploy;
let browser: Browser;
let server: AppServer;
let context: BrowserContext;

beforeAll(async () => {
  first = await deployRelease(1);
  second = await deployRelease(2);
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
  first.remove();
  second.remove();
});

beforeEach(async () => {
  server = await serveApp({ [APP_PATH]: first.folder });
  context = await browser.newContext();
});

afterEach(async () => {
  await context.close();
  await server.kill();
});

const release = (page: Page) =>
  page.evaluate(() => document.documentElement.dataset.release ?? 'none');

const offer = (page: Page) => page.getByRole('button', { name: 'Update now' });

/** The paths in the worker's cache, and the number of caches. */
async function stored(page: Page): Promise<{ readonly caches: number; readonly paths: string[] }> {
  const { names, urls } = await page.evaluate(async () => {
    const keys = await caches.keys();
    const requests = await Promise.all(keys.map(async (key) => (await caches.open(key)).keys()));
    return { names: keys, urls: requests.flat().map((request) => request.url) };
  });
  const paths = urls.map((url) => new URL(url).pathname.slice(APP_PATH.length));
  return { caches: names.length, paths: paths.toSorted() };
}

test('two tabs go over together, when one of them says so', async () => {
  const tab = await openInstalled(context, server.url);
  const other = await openInstalled(context, server.url);
  expect(await stored(tab)).toEqual({ caches: 1, paths: filesToKeep(first.folder) });

  server.mount(APP_PATH, second.folder);
  await tab.reload();
  await offer(tab).waitFor();
  await offer(other).waitFor();
  expect([await release(tab), await release(other)]).toEqual(['1', '1']);

  await offer(tab).click();
  for (const page of [tab, other]) {
    await page.waitForFunction(() => document.documentElement.dataset.release === '2');
    await page.locator('#app h1').waitFor();
    expect(await offer(page).count()).toBe(0);
  }
  expect(await stored(tab)).toEqual({ caches: 1, paths: filesToKeep(second.folder) });
});

test('a run that is open in one tab is not cut off by an update that another one takes', async () => {
  const playing = await openInstalled(context, server.url);
  await playing.getByRole('button', { name: 'Make today’s list' }).click();
  await playing.getByRole('link', { name: 'Begin' }).click();
  await playing.locator('[data-stand]').waitFor();
  const tab = await openInstalled(context, `${server.url}#/map`);

  server.mount(APP_PATH, second.folder);
  await tab.reload();
  await offer(tab).click();
  await tab.getByText('when the run in the other tab is over').waitFor();
  expect(await offer(playing).count()).toBe(0);
  expect([await release(tab), await release(playing)]).toEqual(['1', '1']);

  await playing.goto(`${server.url}#/today`);
  for (const page of [tab, playing]) {
    await page.waitForFunction(() => document.documentElement.dataset.release === '2');
  }
});

test('put off, the new release starts when all tabs have been closed', async () => {
  const tab = await openInstalled(context, server.url);
  server.mount(APP_PATH, second.folder);
  await tab.reload();
  await tab.getByRole('button', { name: 'Later' }).click();
  expect(await offer(tab).count()).toBe(0);
  expect(await release(tab)).toBe('1');

  await tab.close();
  // The browser lets go of a closed tab in its own time, and only then starts what waited.
  const releaseOfNewTab = async () => {
    const later = await context.newPage();
    await later.goto(server.url);
    const found = await release(later);
    await later.close();
    return found;
  };
  await expect.poll(releaseOfNewTab, { timeout: 30_000, interval: 500 }).toBe('2');
});

test('a deploy that is only half there changes nothing, and is taken once it is whole', async () => {
  const tab = await openInstalled(context, server.url);
  const half = await deployRelease(2);
  // What a host with a catch-all page sends for a script that it does not have yet.
  writeFileSync(join(half.folder, half.script), '<!doctype html><title>Home</title>');
  server.mount(APP_PATH, half.folder);
  expect(await tab.evaluate(outcomeOfUpdate)).toBe('redundant');
  await tab.reload();
  await tab.locator('#app h1').waitFor();
  expect(await release(tab)).toBe('1');
  expect(await offer(tab).count()).toBe(0);

  server.mount(APP_PATH, second.folder);
  await tab.reload();
  await offer(tab).click();
  await tab.waitForFunction(() => document.documentElement.dataset.release === '2');
  half.remove();
});

/** Looks for a new worker and gives the state at which its installation ends. */
async function outcomeOfUpdate(): Promise<string> {
  const registration = await navigator.serviceWorker.ready;
  await registration.update();
  const worker = registration.installing;
  if (worker === null) return 'none';
  return new Promise((resolve) => {
    worker.addEventListener('statechange', () => resolve(worker.state));
  });
}
