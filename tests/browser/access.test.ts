/** WCAG 2.2 A and AA by axe-core on every screen, light and dark; and that nothing has to be scrolled while playing. */
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { serveApp, type AppServer } from './app';
import { launchBrowser } from './chromium';

let server: AppServer;
let browser: Browser;

beforeAll(async () => {
  server = await serveApp();
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
  await server.kill();
});

const STANDARDS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What axe finds wrong, as "rule: element". Evaluated as text, which the page's policy does not concern. */
async function faultsOf(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate((values) => {
    const { axe: inPage } = globalThis as unknown as { axe: typeof axe };
    return inPage.run(document, { runOnly: { type: 'tag', values } });
  }, STANDARDS);
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target}`));
}

async function open(colorScheme: 'light' | 'dark', size: { width: number; height: number }) {
  const context = await browser.newContext({
    colorScheme,
    viewport: size,
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  await page.goto(server.url);
  await page.getByRole('button', { name: 'Look round' }).waitFor();
  return page;
}

async function lookRound(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Look round' }).click();
  await page.locator('[data-ready="today"]').waitFor();
}

async function show(page: Page, address: string, ready: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, address);
  await page.locator(ready).first().waitFor();
}

const TABLET = { width: 1024, height: 768 };
const PHONE = { width: 390, height: 844 };

const SCREENS = [
  ['#/today', '[data-ready="today"]'],
  ['#/map', 'table'],
  ['#/map/together.4', 'table'],
  ['#/item/d.major-6.right.2', 'svg'],
  ['#/item/gb.dominant-42.together.4', 'details'],
  ['#/fingering', 'table'],
  ['#/drill/d.dominant-42.left.join', 'svg'],
  ['#/recording', 'input[type=file]'],
  ['#/report', 'table'],
  ['#/lesson', 'ol a'],
  ['#/lesson/d.major-6.together.4', 'select'],
  ['#/examination', '[aria-busy="false"]'],
  ['#/settings', 'h2'],
  ['#/help', 'h2'],
] as const;

describe.each(['light', 'dark'] as const)('%s', (theme) => {
  test('axe finds nothing on any screen', async () => {
    const page = await open(theme, TABLET);
    expect({ screen: 'start', faults: await faultsOf(page) }).toEqual({
      screen: 'start',
      faults: [],
    });
    await lookRound(page);
    for (const [screen, ready] of SCREENS) {
      await show(page, screen, ready);
      expect({ screen, faults: await faultsOf(page) }).toEqual({ screen, faults: [] });
    }
    await page.context().close();
  });

  test('axe finds nothing while playing, rating and at the end of an entry', async () => {
    const page = await open(theme, PHONE);
    await lookRound(page);
    await show(page, '#/play', '[data-stand]');
    expect(await faultsOf(page)).toEqual([]);
    await page.getByRole('radio', { name: 'off' }).check();
    await page.getByRole('button', { name: 'Begin' }).click();
    expect(await faultsOf(page)).toEqual([]);
    const onward = page.getByRole('button', { name: /Next chord|To the rating/ });
    while (await onward.isVisible()) await onward.click();
    await page.getByRole('heading', { name: 'How did it go?' }).waitFor();
    expect(await faultsOf(page)).toEqual([]);
    await page.context().close();
  });
});

test.each(['#/report', '#/fingering'])('%s is printed without controls', async (screen) => {
  const page = await open('light', TABLET);
  await lookRound(page);
  await show(page, screen, 'table');
  const controls = page.locator('[data-screen-only]');
  expect(await controls.count()).toBeGreaterThan(2);
  await page.emulateMedia({ media: 'print' });
  expect(await controls.filter({ visible: true }).count()).toBe(0);
  expect(await page.locator('table').first().isVisible()).toBe(true);
  await page.context().close();
});

test.each([
  ['keys and fingers', TABLET],
  ['keys and fingers', PHONE],
  ['notes on the staff', TABLET],
  ['notes on the staff', PHONE],
])('nothing is to be scrolled with %s on a stand of %o', async (picture, size) => {
  const page = await open('light', size);
  await lookRound(page);
  await show(page, '#/settings', 'h2');
  await page.getByRole('radio', { name: picture }).check();
  await show(page, '#/play', '[data-stand]');
  const overflow = () =>
    page.evaluate(() => [
      document.documentElement.scrollHeight - innerHeight,
      document.documentElement.scrollWidth - innerWidth,
    ]);
  await page.getByRole('radio', { name: 'off' }).check();
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.locator('[data-playing="true"]').waitFor();
  for (const pixels of await overflow()) expect(pixels).toBeLessThanOrEqual(0);
  await page.context().close();
});
