/**
 * Takes the pictures of the app for the manifest and README from the built app itself, with the invented student of "Look
 * round": `tsx tests/tools/screenshots.ts`. The results are committed.
 */
import { mkdirSync, rmSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { APP_PATH } from '../browser/app-path';
import { buildSite } from '../browser/build-site';
import { launchBrowser } from '../browser/chromium';
import { startServer } from '../browser/server';

const FOLDER = 'manifest/screenshots';
/** The invented history ends the day before. */
const TODAY = new Date('2026-03-18T16:30:00');

const SHAPES = {
  wide: { viewport: { width: 1280, height: 800 }, deviceScaleFactor: 1 },
  narrow: { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2 },
};

async function lookRound(page: Page, url: string): Promise<void> {
  await page.clock.setFixedTime(TODAY);
  await page.goto(`${url}#/start`);
  await page.getByRole('button', { name: 'Look round' }).click();
  await page.locator('[data-ready="today"]').waitFor();
}

const show = (page: Page, screen: string): Promise<void> =>
  page.evaluate((hash) => {
    location.hash = hash;
  }, `#/${screen}`);

/** A run in the middle of a round, without a beat, so that it stands still. */
async function play(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Begin' }).click();
  await page.getByRole('radio', { name: 'off' }).check();
  await page.keyboard.press('PageDown');
  await page.locator('[data-playing="true"]').waitFor();
  await page.keyboard.press('PageDown');
}

async function takeAll(browser: Browser, url: string, shape: keyof typeof SHAPES): Promise<void> {
  const context = await browser.newContext({ ...SHAPES[shape], colorScheme: 'light' });
  const page = await context.newPage();
  const take = async (name: string): Promise<void> => {
    await page.locator('#app h1').first().waitFor();
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    await page.screenshot({ path: `${FOLDER}/${name}-${shape}.png` });
  };
  await lookRound(page, url);
  await take('today');
  await show(page, 'map');
  await take('map');
  await show(page, 'report');
  await take('report');
  await show(page, 'today');
  await play(page);
  await take('play');
  await context.close();
}

const site = buildSite();
const server = await startServer({ [APP_PATH]: site });
const browser = await launchBrowser();
mkdirSync(FOLDER, { recursive: true });
for (const shape of ['wide', 'narrow'] as const) {
  await takeAll(browser, `${server.origin}${APP_PATH}`, shape);
}
await browser.close();
await server.kill();
rmSync(site, { recursive: true });
