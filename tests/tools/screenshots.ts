/**
 * Makes the pictures of README and the web app manifest from the built app with its invented student:
 * `npm run build && npx tsx tests/tools/screenshots.ts`.
 */
import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { launchBrowser } from '../browser/chromium';
import { startServer } from '../browser/server';

const FOLDER = 'manifest/screenshots';
const FORMS = {
  wide: { width: 1280, height: 960 },
  narrow: { width: 540, height: 960 },
} as const;

async function open(browser: Browser, url: string, form: keyof typeof FORMS): Promise<Page> {
  const page = await browser.newPage({ viewport: FORMS[form], serviceWorkers: 'block' });
  await page.goto(url);
  await page.getByRole('button', { name: 'Look round' }).click();
  await page.locator('[data-ready="today"]').waitFor();
  return page;
}

async function show(page: Page, address: string, ready: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, address);
  await page.locator(ready).first().waitFor();
  await page.waitForTimeout(500);
}

async function main(): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  const server = await startServer({ '/': 'dist' });
  const browser = await launchBrowser();
  for (const form of Object.keys(FORMS) as (keyof typeof FORMS)[]) {
    const page = await open(browser, `${server.origin}/`, form);
    const shoot = (name: string) => page.screenshot({ path: `${FOLDER}/${name}-${form}.png` });
    await shoot('today');
    await show(page, '#/map/together.4', 'table');
    await shoot('map');
    await show(page, '#/play', '[data-stand]');
    await page.getByRole('radio', { name: 'off' }).check();
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.locator('[data-playing="true"]').waitFor();
    await page.waitForTimeout(500);
    await shoot('play');
    await page.close();
  }
  await browser.close();
  await server.kill();
}

void main();
