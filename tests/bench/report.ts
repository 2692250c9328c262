/**
 * How long the report of a full programme takes, from the button to the file: all twelve notes in five stages, with the
 * history of the invented student, with the processor as it is and four times slower.
 */
import { rmSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { APP_PATH } from '../browser/app-path';
import { buildSite } from '../browser/build-site';
import { launchBrowser } from '../browser/chromium';
import { startServer } from '../browser/server';
import { timesOf } from './page';

const RATES = [1, 4];
const TIMES = 7;
/** Milliseconds, with the processor four times slower. */
const LIMIT = 2000;

async function openReport(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await page.getByRole('button', { name: 'Look round' }).click();
  await page.locator('[data-ready="today"]').waitFor({ timeout: 120_000 });
  await page.goto(`${url}#/settings`);
  await page.getByRole('button', { name: 'Change the programme' }).click();
  await page.getByRole('radio', { name: 'all twelve' }).check();
  await page.getByRole('button', { name: 'Save the programme' }).click();
  await page.getByText('Programme saved.').waitFor();
  await page.goto(`${url}#/report`);
  await page.getByText(/, 660 items/).waitFor();
  // What writes the PDF is read in a moment after the report has been drawn.
  await page.waitForTimeout(5000);
}

async function timeToFile(page: Page): Promise<number> {
  const button = page.getByRole('button', { name: 'Save as PDF' });
  const begin = performance.now();
  await Promise.all([page.waitForEvent('download', { timeout: 120_000 }), button.click()]);
  const end = performance.now();
  await page.waitForTimeout(500);
  return end - begin;
}

export async function benchReport(): Promise<void> {
  const site = buildSite();
  const server = await startServer({ [APP_PATH]: site });
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ serviceWorkers: 'block' });
    await openReport(page, `${server.origin}${APP_PATH}`);
    const devtools = await page.context().newCDPSession(page);
    for (const rate of RATES) {
      await devtools.send('Emulation.setCPUThrottlingRate', { rate });
      const times: number[] = [];
      for (let i = 0; i < TIMES; i++) times.push(await timeToFile(page));
      const { fastest, median } = timesOf(times);
      const limit = rate === 4 ? ` (at most ${LIMIT})` : '';
      console.log(`the PDF of 660 items, processor ${rate} times slower:`);
      console.log(
        `  fastest of ${TIMES}: ${fastest.toFixed(0)} ms, median ${median.toFixed(0)} ms${limit}`,
      );
    }
  } finally {
    await browser.close();
    await server.kill();
    rmSync(site, { recursive: true });
  }
}
