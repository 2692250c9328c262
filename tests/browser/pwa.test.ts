/** The installed app: what the browser asks of it, and a start with nothing but what it has stored. */
import type { Browser, BrowserContext } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { buildKillSwitch } from '../../service-worker/build';
import { newProfile, openInstalled, serveApp, watchErrors, type AppServer } from './app';
import { APP_PATH } from './app-path';
import { launchBrowser, launchProfile } from './chromium';
import { deployRelease } from './deploy';

let server: AppServer;

beforeEach(async () => {
  server = await serveApp();
});

afterEach(() => server.kill());

describe('with a profile that is kept', () => {
  let profile: ReturnType<typeof newProfile>;
  let context: BrowserContext;

  beforeEach(async () => {
    profile = newProfile();
    context = await launchProfile(profile.folder);
  });

  afterEach(async () => {
    await context.close();
    profile.remove();
  });

  test('Chromium finds nothing against installing it, and takes its path as its id', async () => {
    const page = await openInstalled(context, server.url);
    const devtools = await context.newCDPSession(page);
    const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
    expect(installabilityErrors).toEqual([]);
    const { appId } = await devtools.send('Page.getAppId');
    expect(appId).toBe(server.url);
    const { errors } = await devtools.send('Page.getAppManifest');
    expect(errors).toEqual([]);
  });

  test('it starts cold with the host dead, from every address that leads to it', async () => {
    await openInstalled(context, server.url);
    await context.close();
    await server.kill();
    context = await launchProfile(profile.folder);
    for (const address of ['', 'index.html', '?source=shortcut', '#/today', '#/map', '#/help']) {
      const page = await context.newPage();
      const errors = watchErrors(page);
      await page.goto(server.url + address);
      await page.locator('#app h1').waitFor();
      expect({ address, errors }).toEqual({ address, errors: [] });
      await page.close();
    }
  });

  test('the last list is there before the app has been read, which takes it over', async () => {
    const page = await openInstalled(context, server.url);
    await page.getByRole('button', { name: 'Make today’s list' }).click();
    const list = page.locator('[data-ready="today"]');
    const text = await list.innerText();
    await page.waitForFunction(() => localStorage.getItem('today') !== null);
    // The app opens the database as soon as it has been read.
    await page.addInitScript(() => {
      const open = indexedDB.open.bind(indexedDB);
      indexedDB.open = (...parts) => {
        const shown = document.querySelector('[data-ready="today"]');
        Object.assign(window, { shown });
        return open(...parts);
      };
    });
    await page.reload();
    await page.waitForFunction(() => 'shown' in window && '__k' in document.querySelector('#app')!);
    expect(await list.innerText()).toBe(text);
    const isSame = await list.evaluate((now) => (window as { shown?: unknown }).shown === now);
    expect(isSame).toBe(true);
    await page.getByRole('spinbutton', { name: 'Minutes today' }).fill('60');
    await page.keyboard.press('Tab');
    await expect.poll(() => list.innerText()).not.toBe(text);
  });
});

describe('in one browser', () => {
  let browser: Browser;
  let context: BrowserContext;

  beforeAll(async () => {
    browser = await launchBrowser();
  });

  afterAll(() => browser.close());

  beforeEach(async () => {
    context = await browser.newContext();
  });

  afterEach(() => context.close());

  test('what is missing is never answered with the page', async () => {
    const page = await openInstalled(context, server.url);
    const status = (path: string) => page.evaluate(async (url) => (await fetch(url)).status, path);
    expect(await status('assets/missing-00000000.js')).toBe(404);
    expect(await status('some/where')).toBe(404);
    expect((await page.goto(`${server.url}some/where`))?.status()).toBe(404);

    await page.goto(server.url);
    await server.kill();
    await expect(status('assets/missing-00000000.js')).rejects.toThrow('Failed to fetch');
    await expect(page.goto(`${server.url}some/where`)).rejects.toThrow('ERR_CONNECTION_REFUSED');
  });

  test('the notice that it works without a network comes once', async () => {
    const page = await context.newPage();
    await page.goto(server.url);
    const notice = page.getByText('it now works without a network');
    await notice.waitFor();
    await page.reload();
    await page.locator('#app h1').waitFor();
    expect(await notice.count()).toBe(0);
  });

  test('the kill switch removes the worker and its files, and leaves the practice data', async () => {
    const page = await openInstalled(context, server.url);
    await page.evaluate(keepNote, 'practised');
    const deploy = await deployRelease(1);
    await buildKillSwitch(deploy.folder);
    server.mount(APP_PATH, deploy.folder);

    await page.reload();
    // The page comes from the host now, so it is the release that only the host has.
    await page.waitForFunction(() => document.documentElement.dataset.release === '1');
    await expect.poll(() => page.evaluate(async () => (await caches.keys()).length)).toBe(0);
    const workers = () =>
      page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length);
    await expect.poll(workers).toBe(0);
    expect(await page.evaluate(readNote)).toBe('practised');
    deploy.remove();
  });
});

function keepNote(text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open('a note of the test', 1);
    opening.addEventListener('upgradeneeded', () => opening.result.createObjectStore('notes'));
    opening.addEventListener('error', () => reject(opening.error));
    opening.addEventListener('success', () => {
      const change = opening.result.transaction('notes', 'readwrite');
      change.objectStore('notes').put(text, 'note');
      change.addEventListener('complete', () => resolve());
    });
  });
}

function readNote(): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open('a note of the test');
    opening.addEventListener('error', () => reject(opening.error));
    opening.addEventListener('success', () => {
      const asking = opening.result.transaction('notes').objectStore('notes').get('note');
      asking.addEventListener('success', () => resolve(asking.result));
    });
  });
}
