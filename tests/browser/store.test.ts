import { readdirSync, readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
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

/** Starts a browser on the profile, has it record, and kills it after so many confirmations. What it found there. */
async function liveAndDie(profile: string, confirmed: string[], count: number) {
  const context = await launchProfile(profile);
  const page = await context.newPage();
  const isEnough = new Promise<void>((resolve) => {
    page.on('console', (message) => {
      const [word, id] = message.text().split(' ');
      if (word === 'confirmed') confirmed.push(id!);
      if (confirmed.length >= count) resolve();
    });
  });
  await page.goto(`${server.origin}/`);
  const found = await page.evaluate(() => window.storeHarness.records());

  const closed = new Promise((resolve) => {
    context.on('close', resolve);
  });
  const recording = page.evaluate(() => window.storeHarness.recordForEver());
  // Whatever keeps it from recording must not keep the test waiting.
  await Promise.race([isEnough, recording]);
  recording.catch(() => undefined);
  process.kill(processOf(profile), 'SIGKILL');
  await closed;
  return found;
}

// Finding the process to kill takes Linux.
describe.runIf(process.platform === 'linux')('a browser that is killed while it records', () => {
  it('loses nothing that was confirmed', { timeout: 120_000 }, async () => {
    const profile = newProfile();
    const confirmed: string[] = [];
    for (const count of [15, 40, 41]) {
      const before = [...confirmed];
      const found = await liveAndDie(profile.folder, confirmed, count);
      expect(found.map(({ id }) => id)).toEqual(expect.arrayContaining(before));
      expect(found.map(({ sequence }) => sequence)).toEqual(found.map((_, i) => i + 1));
    }
    // What the killed browser left behind still writes for a moment.
    await vi.waitFor(() => profile.remove(), { timeout: 20_000, interval: 200 });
  });
});
