/**
 * How long it takes from opening the installed app to today's list, with a long log and the host dead, against a bare
 * Preact page that the same worker serves, with the processor as it is and four times slower; and what the app then
 * holds in memory. Beside the median stands the fastest: a machine that stops now and then, and whose stops the slower
 * processor makes four times as long, disturbs a page the more the longer it takes.
 */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, CDPSession, Page } from 'playwright-core';
import { addWorker } from '../../service-worker/build';
import { APP_PATH } from '../browser/app-path';
import { buildSite } from '../browser/build-site';
import { launchProfile } from '../browser/chromium';
import { buildHarness } from '../browser/harness';
import { startServer } from '../browser/server';

const RUNS = 100_000;
const RATES = [1, 4];
const TIMES = 15;
const LIMIT = 2;
const MB = 1_000_000;
export const READY = 'ready for the benchmark';

declare global {
  interface Window {
    /** Milliseconds from the start of the navigation to the frame that shows what was waited for. */
    readyAt?: number;
    /** The same, until the app has taken over what is shown. */
    liveAt?: number;
  }
}

/** Runs in each page before its own scripts. */
export function watchForReady(word: string): void {
  const observer = new MutationObserver(() => {
    if (document.querySelector('[data-ready]') === null) return;
    observer.disconnect();
    // The frame is drawn between the callback and the task after it.
    requestAnimationFrame(() =>
      setTimeout(() => {
        window.readyAt = performance.now();
        waitForApp();
      }),
    );
  });
  observer.observe(document, { childList: true, subtree: true });

  // Preact marks what it has drawn.
  function waitForApp(): void {
    if (!('__k' in document.querySelector('#app')!)) {
      setTimeout(waitForApp);
      return;
    }
    window.liveAt = performance.now();
    console.info(word);
  }
}

/** Milliseconds. */
interface Opening {
  readonly shown: number;
  readonly live: number;
}

/** Asks nothing of the page before it is ready: the question itself would be a script that it has to read. */
export async function timeToReady(
  context: BrowserContext,
  url: string,
  rate: number,
): Promise<Opening> {
  const page = await context.newPage();
  const devtools = await context.newCDPSession(page);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate });
  const ready = page.waitForEvent('console', {
    predicate: (message) => message.text() === READY,
    timeout: 120_000,
  });
  await page.goto(url, { waitUntil: 'commit' });
  await ready;
  const opening = await page.evaluate(() => ({ shown: window.readyAt!, live: window.liveAt! }));
  await page.close();
  return opening;
}

async function heapSize(context: BrowserContext, url: string): Promise<number> {
  const page = await context.newPage();
  await page.goto(url);
  await page.locator('[data-ready]').waitFor();
  const devtools: CDPSession = await context.newCDPSession(page);
  await devtools.send('HeapProfiler.collectGarbage');
  const { usedSize } = await devtools.send('Runtime.getHeapUsage');
  await page.close();
  return usedSize;
}

/** Opens the app with the whole log unread, and waits until the worker and the checkpoint are stored. */
async function readAtFirst(page: Page, url: string): Promise<number> {
  await page.goto(url);
  await page.waitForFunction(() => window.readyAt !== undefined, null, { timeout: 300_000 });
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.waitForFunction(hasCheckpoint, null, { timeout: 120_000, polling: 1000 });
  return page.evaluate(() => window.readyAt!);
}

function hasCheckpoint(): Promise<boolean> {
  return new Promise((resolve) => {
    const opening = indexedDB.open('arpeggiary');
    opening.addEventListener('success', () => {
      const asking = opening.result.transaction('kept').objectStore('kept').count('log.checkpoint');
      asking.addEventListener('success', () => {
        opening.result.close();
        resolve(asking.result === 1);
      });
    });
  });
}

const inMB = (bytes: number): string => `${(bytes / MB).toFixed(1)} MB`;

interface Times {
  readonly fastest: number;
  readonly median: number;
}

export function timesOf(values: readonly number[]): Times {
  const sorted = values.toSorted((a, b) => a - b);
  return { fastest: sorted[0]!, median: sorted[Math.floor(sorted.length / 2)]! };
}

async function compare(context: BrowserContext, app: string, hello: string, rate: number) {
  const times = { app: [] as number[], live: [] as number[], hello: [] as number[] };
  // In turn, so that whatever else the machine does meets both.
  for (let i = 0; i < TIMES; i++) {
    times.hello.push((await timeToReady(context, hello, rate)).shown);
    const { shown, live } = await timeToReady(context, app, rate);
    times.app.push(shown);
    times.live.push(live);
  }
  const [ofApp, ofLive, ofHello] = [times.app, times.live, times.hello].map(timesOf);
  console.log(`today's list with ${RUNS} runs, processor ${rate} times slower:`);
  for (const kind of ['fastest', 'median'] as const) {
    const [one, other] = [ofApp![kind], ofHello![kind]];
    console.log(
      `  ${kind} of ${TIMES}: ${one.toFixed(0)} ms, a bare Preact page: ${other.toFixed(0)} ms`,
    );
    console.log(`  ratio ${(one / other).toFixed(2)} (at most ${LIMIT})`);
    console.log(`  until the app has taken the list over: ${ofLive![kind].toFixed(0)} ms`);
  }
}

async function measure(context: BrowserContext, app: string, hello: string): Promise<void> {
  for (const rate of RATES) await compare(context, app, hello, rate);
  const [appHeap, helloHeap] = [await heapSize(context, app), await heapSize(context, hello)];
  console.log(`memory after loading: ${inMB(appHeap)}, of the bare page: ${inMB(helloHeap)}`);
}

export async function benchPage(): Promise<void> {
  const site = buildSite();
  cpSync(await buildHarness('tests/bench/hello.tsx'), join(site, 'hello'), { recursive: true });
  await addWorker(site);
  const seedFolder = await buildHarness('tests/bench/seed.ts');
  const server = await startServer({ [APP_PATH]: site, '/seed/': seedFolder });
  const profile = mkdtempSync(join(tmpdir(), 'arpeggiary-bench-'));
  const context = await launchProfile(profile);
  try {
    const app = `${server.origin}${APP_PATH}`;
    const page = await context.newPage();
    await page.goto(`${server.origin}/seed/`);
    await page.evaluate((runs) => window.seed(runs), RUNS);
    await context.addInitScript(watchForReady, READY);
    const first = await readAtFirst(page, app);
    console.log(`the first opening after a restore of ${RUNS} runs: ${first.toFixed(0)} ms`);
    await page.close();
    await server.kill();
    await measure(context, app, `${app}hello/`);
  } finally {
    await context.close();
    await server.kill();
    rmSync(site, { recursive: true });
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}
