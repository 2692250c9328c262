/**
 * How the overview of all students grows: a device with many students against one with a single one, both with the
 * same number of runs for each. A task of the page is measured by the processor's time, as in exchange.ts.
 */
import { rmSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { APP_PATH } from '../browser/app-path';
import { buildSite } from '../browser/build-site';
import { launchBrowser } from '../browser/chromium';
import { startServer } from '../browser/server';
import { tasksDuring } from './tasks';
import { studioFile } from './studio-log';

const STUDENTS = 40;
const RUNS = 2000;
const MB = 1_000_000;
/** Milliseconds for reading and for taking in a long file. */
const PATIENCE = 300_000;

/** Milliseconds until all rows are there, the longest task of the page meanwhile, bytes of the page afterwards. */
interface Measured {
  readonly time: number;
  readonly task: number;
  readonly memory: number;
}

const today = (): string => new Date().toISOString().slice(0, 10);

/** The app with so many students, and one more who is archived: with a single one there is no overview. */
async function deviceOf(browser: Browser, url: string, students: number): Promise<BrowserContext> {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.goto(`${url}#/receive`);
  const places = Array.from({ length: students + 1 }, (_, place) => place);
  const buffer = Buffer.from(studioFile(places, RUNS, today()));
  const file = { name: 'x.arpeggiary', mimeType: 'application/octet-stream', buffer };
  await page.getByLabel(/Backup file/).setInputFiles(file);
  await page.getByRole('button', { name: 'Take in' }).click({ timeout: PATIENCE });
  await page.locator('[data-ready]').waitFor({ timeout: PATIENCE });
  await page.goto(`${url}#/settings`);
  await page.getByRole('listitem').getByRole('button', { name: /^More/ }).last().click();
  await page.getByRole('button', { name: 'Archive' }).click();
  await page.getByText('(archived)').waitFor();
  await page.close();
  return context;
}

/** Milliseconds until all rows are there. */
const openOverview = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const start = performance.now();
    location.hash = '#/studio';
    while (
      document.querySelector('tbody tr') === null ||
      document.querySelector('tr[aria-busy="true"]') !== null
    ) {
      await new Promise((resume) => {
        setTimeout(resume, 10);
      });
    }
    return performance.now() - start;
  });

/** Opens the overview in a window of its own, as after the app has been started. */
async function measure(context: BrowserContext, url: string): Promise<Measured> {
  const page = await context.newPage();
  await page.goto(url);
  await page.locator('[data-ready]').waitFor();
  let time = 0;
  const tasks = await tasksDuring(page, async () => {
    time = await openOverview(page);
  });
  const client = await context.newCDPSession(page);
  await client.send('HeapProfiler.collectGarbage');
  const { usedSize } = await client.send('Runtime.getHeapUsage');
  await page.close();
  return { time, task: Math.max(...tasks), memory: usedSize };
}

const text = ({ time, task, memory }: Measured): string =>
  `${time.toFixed(0)} ms, longest task ${task.toFixed(0)} ms, memory ${(memory / MB).toFixed(1)} MB`;

function compare(when: string, one: Measured, many: Measured): void {
  const ratio = (key: keyof Measured) => (many[key] / one[key]).toFixed(1);
  console.log(`${when}:`);
  console.log(`  one student: ${text(one)}`);
  console.log(`  ${STUDENTS} students: ${text(many)}`);
  console.log(`  growth: time ${ratio('time')}, task ${ratio('task')}, memory ${ratio('memory')}`);
}

export async function benchStudio(): Promise<void> {
  const site = buildSite();
  const server = await startServer({ [APP_PATH]: site });
  const browser = await launchBrowser();
  const url = `${server.origin}${APP_PATH}`;
  try {
    const one = await deviceOf(browser, url, 1);
    const many = await deviceOf(browser, url, STUDENTS);
    for (const when of [
      `read for the first time, ${RUNS} runs each`,
      'after a start of the app',
      'after another',
    ]) {
      const small = await measure(one, url);
      compare(when, small, await measure(many, url));
    }
  } finally {
    await browser.close();
    await server.kill();
    rmSync(site, { recursive: true });
  }
}
