/** A student who plays some of it already is placed on the built app: probes on the stand, and a list that follows. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { browseApp } from './browse';
import { faultsOf } from './faults';
import { beginWithoutBeat, runsIn, toRating } from './on-stand';
import { begin, overflowOf } from './steps';

const app = browseApp();

const place = (page: Page, number: number) =>
  page.getByRole('img', { name: `Run ${number} of 10` }).waitFor();

/** By pedal to the rating of a probe, and rates it. */
async function probe(page: Page, fluency: string): Promise<void> {
  await page.locator('[data-stand][data-playing="false"]').waitFor();
  await page.keyboard.press('PageDown');
  await page.locator('[data-playing="true"]').waitFor();
  await toRating(page, 1);
  await page.getByRole('button', { name: fluency, exact: true }).click();
}

test('a student finds out where he is, and the list of the same day follows', async () => {
  const { page } = await app.newDevice({ viewport: { width: 390, height: 844 } });
  await begin(page);
  const firstRow = page.locator('[data-ready="today"] ol > li').first();
  expect(await firstRow.innerText()).toContain('Not played yet. Likely even at 45');

  await page.getByRole('link', { name: 'Find out where you are' }).click();
  await page.getByRole('button', { name: 'Begin' }).click();
  await place(page, 1);
  await page.getByText('Warm up first').waitFor();
  await beginWithoutBeat(page);
  await toRating(page, 1);
  await page.getByRole('button', { name: 'effortless' }).click();

  // Passed over, the same place has another arpeggio.
  await place(page, 2);
  const chord = page.locator('[data-stand] h1');
  const passedOver = await chord.innerText();
  await page.getByRole('button', { name: 'Skip this one' }).click();
  await page.waitForFunction(
    (before) => document.querySelector<HTMLElement>('[data-stand] h1')!.innerText !== before,
    passedOver,
  );
  await place(page, 2);

  // A reload comes back to the same probe.
  const asked = await chord.innerText();
  await page.reload();
  await place(page, 2);
  expect(await chord.innerText()).toBe(asked);
  await probe(page, 'effortless');

  // Undone, the rating is open again, and counts when it has been put right.
  await place(page, 3);
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('heading', { name: 'How did it go?' }).waitFor();
  await page.getByRole('button', { name: 'even', exact: true }).click();
  await place(page, 3);
  for (const fluency of ['effortless', 'even', 'effortless']) await probe(page, fluency);

  // Enough, before all ten.
  await place(page, 6);
  await page.getByRole('button', { name: 'Enough' }).click();
  await page.getByRole('heading', { name: 'Where you are' }).waitFor();
  await page.getByText('After 5 runs').waitFor();
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await faultsOf(page)).toEqual([]);
  }
  expect(await overflowOf(page)).toMatchObject({ across: 0 });
  await page.getByRole('button', { name: 'Begin there' }).click();
  await page.getByText('The programme says so already.').waitFor();

  const runs = await runsIn(page);
  expect(runs.every(({ entry }) => entry === null)).toBe(true);
  // The one that was taken back stays in the log.
  expect(runs.map(({ fluency }) => fluency)).toEqual([4, 4, 3, 4, 3, 4]);

  await page.getByRole('link', { name: 'To today’s list' }).click();
  expect(await firstRow.innerText()).not.toContain('right hand');
  await page.getByRole('link', { name: 'Begin' }).waitFor();
});
