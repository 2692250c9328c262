import { readdirSync, readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contract } from '../store/contract';
import type { Result } from '../store/harness';
import { newProfile } from './app';
import { launchBrowser, launchProfile } from './chromium';
import { buildHarness } from './harness';
import { startServer, type Server } from './server';

let server: Server;

beforeAll(async () => {
  server = await startServer({ '/': await buildHarness('tests/store/harness.ts') });
});

afterAll(() => server.kill());

describe('the store, in Chromium', () => {
  let browser: Browser;
  let page: Page;
  let results: readonly Result[];

  beforeAll(async () => {
    browser = await launchBrowser();
    page = await browser.newPage();
    await page.goto(`${server.origin}/`);
    results = await page.evaluate(() => window.storeHarness.runContract());
  });

  afterAll(() => browser.close());

  it.each(Object.keys(contract))('%s', (name) => {
    expect(results.find((result) => result.name === name)).toEqual({ name, ok: true, error: '' });
  });

  it('a device without room: what was confirmed is there, what was not is told', async () => {
    const client = await page.context().newCDPSession(page);
    const quota = { origin: server.origin, quotaSize: 3_000_000 };
    await client.send('Storage.overrideQuotaForOrigin', quota);
    const { confirmed, ...end } = await page.evaluate(() => window.storeHarness.recordUntilFull());
    expect(end).toMatchObject({ name: 'StoreError', kind: 'full', shown: confirmed });
    expect(end.message).toMatch(/no room left/);
    expect(confirmed).toBeGreaterThan(0);
    const records = await page.evaluate(() => window.storeHarness.records());
    expect(records).toHaveLength(confirmed);
  });
});

/** The browser's own process on this profile: the one without a type, which its helpers all have. */
function processOf(profile: string): number {
  const isBrowser = (pid: string): boolean => {
    try {
      const command = readFileSync(`/proc/${pid}/cmdline`, 'utf8');
      return command.includes(profile) && !command.includes('--type=') && /chrom/.test(command);
    } catch {
      return false;
    }
  };
  return Number(readdirSync('/proc').find((name) => /^\d+$/.test(name) && isBrowser(name)));
}

describe('a browser that is killed while it records', () => {
  it('loses nothing that was confirmed', async () => {
    const profile = newProfile();
    const confirmed: string[] = [];
    for (const until of [15, 40, 60]) {
      const context = await launchProfile(profile.folder);
      const page = await context.newPage();
      const isEnough = new Promise<void>((resolve) => {
        void page.exposeFunction('tell', (id: string) => {
          confirmed.push(id);
          if (confirmed.length >= until) resolve();
        });
      });
      await page.goto(`${server.origin}/`);
      // Before the first recording there is no database to look into.
      const found =
        confirmed.length === 0 ? [] : await page.evaluate(() => window.storeHarness.records());
      const ids = found.map(({ id }) => id);
      expect(ids).toEqual(expect.arrayContaining(confirmed));
      expect(found.map(({ sequence }) => sequence)).toEqual(ids.map((_, i) => i + 1));
      const closed = new Promise((resolve) => {
        context.on('close', resolve);
      });
      // Ends with the browser, and not well.
      page.evaluate(() => window.storeHarness.recordForEver(window.tell)).catch(() => undefined);
      await isEnough;
      process.kill(processOf(profile.folder), 'SIGKILL');
      await closed;
    }
    expect(confirmed.length).toBeGreaterThanOrEqual(60);
    profile.remove();
  });
});
