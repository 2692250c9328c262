/** WCAG 2.2 A and AA by axe-core on every screen, light and dark; and that no screen is wider than the device. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { studioFile } from '../bench/studio-log';
import { browseApp } from './browse';
import { faultsOf } from './faults';
import { chooseFile, lookRound, overflowOf, show } from './steps';

const app = browseApp();

async function open(viewport: { width: number; height: number }) {
  const { page } = await app.newDevice({
    viewport,
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
  });
  await page.getByRole('button', { name: 'Look round' }).waitFor();
  return page;
}

async function showReady(page: Page, address: string, ready: string): Promise<void> {
  await show(page, address);
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
  ['#/placement', 'h1'],
  ['#/programme', 'h1'],
  ['#/receive', 'h1'],
  ['#/settings', 'h2'],
  ['#/help', 'h2'],
] as const;

test('axe finds nothing, light and dark', async () => {
  const page = await open(TABLET);
  const isFine = async (screen: string) => {
    expect({ screen, faults: await faultsOf(page) }).toEqual({ screen, faults: [] });
  };
  await isFine('start');
  await lookRound(page);
  for (const [screen, ready] of SCREENS) {
    await showReady(page, screen, ready);
    await isFine(screen);
  }
  await page.setViewportSize(PHONE);
  await showReady(page, '#/play', '[data-stand]');
  await isFine('before a run');
  await page.getByRole('radio', { name: 'off' }).check();
  await page.getByRole('button', { name: 'Begin' }).click();
  await isFine('a run');
  const onward = page.getByRole('button', { name: /Next chord|To the rating/ });
  while (await onward.isVisible()) await onward.click();
  await page.getByRole('heading', { name: 'How did it go?' }).waitFor();
  await isFine('rating');
});

/** A device with a dozen students, taken in from a file. */
async function takeInMany(page: Page): Promise<void> {
  await showReady(page, '#/receive', 'input[type=file]');
  const places = Array.from({ length: 12 }, (_, place) => place);
  const buffer = Buffer.from(studioFile(places, 40, new Date().toISOString().slice(0, 10)));
  await chooseFile(page, buffer);
  await page.getByRole('button', { name: 'Take in' }).click();
  await page.locator('[data-ready]').waitFor();
}

test('a device with many students, light and dark', async () => {
  const page = await open(TABLET);
  await takeInMany(page);
  await showReady(page, '#/studio', 'table');
  await page.getByText(/^Reading/).waitFor({ state: 'detached' });
  expect(await faultsOf(page)).toEqual([]);
  for (const size of [{ width: 700, height: 900 }, PHONE]) {
    await page.setViewportSize(size);
    expect(await overflowOf(page)).toMatchObject({ across: 0 });
    // What a style sheet lays out as cards is a table all the same.
    expect(await page.getByRole('rowheader').count()).toBe(12);
    expect(await page.getByRole('cell', { includeHidden: true }).count()).toBe(12 * 8);
  }
  expect(await faultsOf(page)).toEqual([]);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('[data-screen-only]').filter({ visible: true }).count()).toBe(0);
});

test('no screen is wider than the device, nor anything on paper that is only for the screen', async () => {
  const page = await open(PHONE);
  await lookRound(page);
  const controls = page.locator('[data-screen-only]').filter({ visible: true });
  for (const [screen, ready] of SCREENS) {
    await showReady(page, screen, ready);
    for (const size of [PHONE, TABLET]) {
      await page.setViewportSize(size);
      const { across } = await overflowOf(page);
      expect({ screen, width: size.width, across }).toMatchObject({ across: 0 });
    }
    await page.emulateMedia({ media: 'print' });
    expect({ screen, controls: await controls.count() }).toEqual({ screen, controls: 0 });
    await page.emulateMedia({ media: 'screen' });
  }
});

test('nothing is to be scrolled during a run', async () => {
  const page = await open(TABLET);
  await lookRound(page);
  for (const picture of ['keys and fingers', 'notes on the staff']) {
    await showReady(page, '#/settings', 'h2');
    await page.getByRole('radio', { name: picture }).check();
    await showReady(page, '#/play', '[data-stand]');
    await page.getByRole('radio', { name: 'off' }).check();
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.locator('[data-playing="true"]').waitFor();
    for (const size of [TABLET, PHONE]) {
      await page.setViewportSize(size);
      const { down, across } = await overflowOf(page);
      expect({ picture, size, down: Math.max(0, down), across }).toMatchObject({
        down: 0,
        across: 0,
      });
    }
    await page.getByRole('button', { name: 'Stop' }).click();
  }
});
