import { readdirSync, readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { contract } from '../store/contract';
import type { Result } from '../store/harness';
import { newProfile } from './app';
import { launchBrowser, launchProfile } from './chromium';
import { buildHarness } from './harness';
import { startServer, type Server } from './server';

let server: Server;

/** Of the file that is taken in while the browser is killed: with the programme it holds one event more. */
const RUNS = 4000;

beforeAll(async () => {
  server = await startServer({ '/': await buildHarness('tests/store/harness.ts') });
});

afterAll(() => server.kill());

describe('the store, in Chromium', () => {
  let browser: Browser;
  let results: readonly Result[];

  beforeAll(async () => {
    browser = await launchBrowser();
    const page = await browser.newPage();
    await page.goto(`${server.origin}/`);
    results = await page.evaluate(() => window.storeHarness.runContract());
  });

  afterAll(() => browser.close());

  it.each(Object.keys(contract))('%s', (name) => {
    expect(results.find((result) => result.name === name)).toEqual({ name, ok: true, error: '' });
  });

  it('a device without room: what was confirmed is there, what was not is told', async () => {
    // A context of its own: after the contract's hundred databases the browser takes a minute over the same.
    const page = await browser.newPage();
    await page.goto(`${server.origin}/`);
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

/** The browser's own process on a profile: the one without a type, which its helpers all have. */
function processOf(profile: string): number {
  const isBrowser = (pid: string): boolean => {
    try {
      const command = readFileSync(`/proc/${pid}/cmdline`, 'utf8');
      return command.includes(`=${profile}`) && !command.includes('--type=');
    } catch {
      // It ended while we looked.
      return false;
    }
  };
  const pid = readdirSync('/proc').find((name) => /^\d+$/.test(name) && isBrowser(name));
  if (pid === undefined) throw new Error('no browser runs on this profile');
  return Number(pid);
}

interface Life {
  /** What the page does until the end. */
  readonly work: (page: Page) => Promise<unknown>;
  /** Whether what the page says on its console ends its life. */
  readonly isEnough: (word: string, id: string) => boolean;
  /** Milliseconds that it lives on after that. */
  readonly delay?: number;
}

/** Starts a browser on the profile, has it work, and kills it. What it found there. */
async function liveAndDie(profile: string, { work, isEnough, delay = 0 }: Life) {
  const context = await launchProfile(profile);
  const page = await context.newPage();
  const end = new Promise<void>((resolve) => {
    page.on('console', (message) => {
      const [word, id] = message.text().split(' ');
      if (isEnough(word!, id!)) setTimeout(resolve, delay);
    });
  });
  await page.goto(`${server.origin}/`);
  const found = await page.evaluate(() => window.storeHarness.records());

  const closed = new Promise((resolve) => {
    context.on('close', resolve);
  });
  const working = work(page);
  // Whatever keeps it from working must not keep the test waiting.
  await Promise.race([end, working]);
  working.catch(() => undefined);
  process.kill(processOf(profile), 'SIGKILL');
  await closed;
  return found;
}

// Finding the process to kill takes Linux.
describe.runIf(process.platform === 'linux')('a browser that is killed', () => {
  it('while it records: loses nothing that was confirmed', async () => {
    const profile = newProfile();
    const confirmed: string[] = [];
    for (const count of [15, 40, 41]) {
      const before = [...confirmed];
      const found = await liveAndDie(profile.folder, {
        work: (page) => page.evaluate(() => window.storeHarness.recordForEver()),
        isEnough: (word, id) => {
          if (word === 'confirmed') confirmed.push(id);
          return confirmed.length >= count;
        },
      });
      expect(found.map(({ id }) => id)).toEqual(expect.arrayContaining(before));
      expect(found.map(({ sequence }) => sequence)).toEqual(found.map((_, i) => i + 1));
    }
    // What the killed browser left behind still writes for a moment.
    await vi.waitFor(() => profile.remove(), { timeout: 20_000, interval: 200 });
  });

  it('while it takes a file in: has all of it or nothing, and takes it in the next time', async () => {
    const profile = newProfile();
    for (const delay of [0, 100, 500]) {
      const found = await liveAndDie(profile.folder, {
        work: (page) => page.evaluate((count) => window.storeHarness.takeIn(count), RUNS),
        isEnough: (word) => word === 'taking',
        delay,
      });
      expect([0, RUNS + 1]).toContain(found.length);
    }
    const context = await launchProfile(profile.folder);
    const page = await context.newPage();
    await page.goto(`${server.origin}/`);
    const count = () => page.evaluate(async () => (await window.storeHarness.records()).length);
    expect([0, RUNS + 1]).toContain(await count());
    await page.evaluate((runs) => window.storeHarness.takeIn(runs), RUNS);
    expect(await count()).toBe(RUNS + 1);
    await context.close();
    await vi.waitFor(() => profile.remove(), { timeout: 20_000, interval: 200 });
  });
});
