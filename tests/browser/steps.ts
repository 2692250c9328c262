/** What a person does in many of the tests. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

/** Begins as a new student with the usual programme. */
export async function begin(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Make today’s list' }).click();
  await page.locator('[data-ready="today"]').waitFor();
}

/** Opens the invented student. */
export async function lookRound(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Look round' }).click();
  await page.locator('[data-ready="today"]').waitFor();
}

/** Goes to a screen ("#/map") as a link would. */
export const show = (page: Page, address: string): Promise<void> =>
  page.evaluate((hash) => {
    location.hash = hash;
  }, address);

export const press = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('button', { name, exact: true }).click();

/** What is downloaded when a button is pressed. */
export async function downloaded(page: Page, button: string | RegExp): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).first().click(),
  ]);
  return readFileSync(await download.path());
}

/** Chooses a file of the app ("log.arpeggiary") where one is taken in. */
export const chooseFile = (page: Page, buffer: Buffer): Promise<void> =>
  page
    .getByLabel(/Backup file/)
    .setInputFiles({ name: 'log.arpeggiary', mimeType: 'application/octet-stream', buffer });

/** Pixels by which the page is higher and wider than the window. */
export const overflowOf = (page: Page): Promise<{ down: number; across: number }> =>
  page.evaluate(() => ({
    down: document.documentElement.scrollHeight - innerHeight,
    across: document.documentElement.scrollWidth - innerWidth,
  }));

/** Milliseconds between two presses of the same button: a second one at once would be taken for a double tap. */
export const BETWEEN_MARKS = 300;
