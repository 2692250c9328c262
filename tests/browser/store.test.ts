import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contract } from '../store/contract';
import type { Result } from '../store/harness';
import { launchBrowser } from './chromium';
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
