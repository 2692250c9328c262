/**
 * The whole story on the built app, as a student lives it: a programme, a ten-minute list, a round and a single item, a
 * reload in the middle, the network gone, the second day, undo, the report, a backup, a wiped device, and restore.
 */
import { parse } from 'csv-parse/sync';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { liveAt, newProfile, openInstalled, serveApp, watchErrors, type AppServer } from './app';
import { launchProfile } from './chromium';
import { begin, chooseFile, downloaded } from './steps';

const profile = newProfile();
let server: AppServer;
let context: BrowserContext;

beforeAll(async () => {
  server = await serveApp();
  context = await launchProfile(profile.folder);
});

afterAll(async () => {
  await context.close();
  await server.kill();
  profile.remove();
});

const entriesOf = (page: Page) =>
  page.locator('[data-ready="today"] ol > li').allInnerTexts() as Promise<readonly string[]>;

/** Today's list in words, without what is done already. */
async function openEntries(page: Page): Promise<readonly string[]> {
  await page.locator('[data-ready="today"]').waitFor();
  return page.locator('[data-ready="today"] ol > li[data-state="open"]').allInnerTexts();
}

const choose = (page: Page, legend: string | RegExp, option: string) =>
  page
    .getByRole('group', { name: legend })
    .getByRole('radio', { name: option, exact: true })
    .check();

/** Goes through an entry with the pedal alone, as fast as it can be pressed. */
async function playByPedal(page: Page, chords: number): Promise<void> {
  await page.locator('[data-stand][data-playing="false"]').waitFor();
  await page.keyboard.press('PageDown');
  await page.locator('[data-stand][data-playing="true"]').waitFor();
  for (let i = 0; i < chords; i++) await page.keyboard.press('PageDown');
  await page.getByRole('heading', { name: 'How did it go?' }).waitFor();
}

/** Plays a single item as fast as the beat goes; the beat alone leads to the rating. */
async function playToTheBeat(page: Page): Promise<void> {
  await choose(page, 'Beat', 'seen');
  await page.getByRole('spinbutton', { name: /Tempo/ }).fill('150');
  await page.keyboard.press('Tab');
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('heading', { name: 'How did it go?' }).waitFor();
}

test('a student plays through two days, offline and through a wiped device', async () => {
  // First start: D only, all the way to contrary motion, ten minutes.
  await liveAt(context, '2026-03-02T17:00:00');
  let page = await openInstalled(context, server.url);
  const errors = watchErrors(page);
  await choose(page, 'Starting notes', 'choose');
  const keys = page.getByRole('group', { name: 'Each starting note' });
  for (const note of ['C', 'E', 'F', 'G', 'A', 'B']) {
    await keys.getByRole('checkbox', { name: note, exact: true }).uncheck();
  }
  await choose(page, /The stage that goes well/, 'hands together, contrary motion');
  await page.getByRole('checkbox', { name: 'hands together, contrary motion' }).check();
  await page.getByRole('spinbutton', { name: 'Minutes a day' }).fill('10');
  await page.getByLabel(/What the student is called/).fill('Wilma Beispiel');
  await begin(page);

  // A ten-minute list of rounds and single items; two entries are left out, so that one round and one single stay.
  const first = await openEntries(page);
  const rounds = first.filter((text) => text.includes('Round of'));
  const singles = first.filter((text) => !text.includes('Round of'));
  expect(rounds.length).toBeGreaterThan(0);
  expect(singles.length).toBeGreaterThan(0);
  expect(first.every((text) => /Not played yet|time today/.test(text))).toBe(true);
  const chords = Number(/Round of (\d+)/.exec(rounds[0]!)![1]);

  // The round, by pedal and without a beat; a reload in the middle comes back to the same chord.
  await page.getByRole('link', { name: 'Begin' }).click();
  await choose(page, 'Beat', 'off');
  await page.keyboard.press('PageDown');
  await page.locator('[data-playing="true"]').waitFor();
  await page.keyboard.press('PageDown');
  await page.getByRole('img', { name: `Chord 2 of ${chords}` }).waitFor();
  await page.reload();
  await page.getByRole('button', { name: 'Go on with chord 2' }).waitFor();
  await playByPedal(page, chords - 1);

  // Rating: every row stands at "even"; two exceptions; a reload loses none of them.
  const rows = page.locator('main ol > li');
  expect(await rows.count()).toBe(chords);
  await rows.nth(1).getByRole('radio', { name: 'uneven', exact: true }).check();
  await rows.nth(3).getByRole('radio', { name: 'effortless' }).check();
  await expect.poll(() => page.locator('[data-exception="true"]').count()).toBe(2);
  await page.waitForTimeout(300);
  await page.reload();
  await page.getByRole('heading', { name: 'How did it go?' }).waitFor();
  expect(await page.locator('[data-exception="true"]').count()).toBe(2);
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByText(`Saved: ${chords} chords.`).waitFor();

  // The other rounds are left out today.
  for (let i = 1; i < rounds.length; i++) {
    await page.getByRole('button', { name: 'Leave it out today' }).click();
  }

  // The network is cut and the host dies; a single run is rated with one tap.
  await server.kill();
  await context.setOffline(true);
  await page.reload();
  await playToTheBeat(page);
  await page.getByRole('button', { name: 'uneven' }).click();
  await page.getByText('Saved.').waitFor();

  // Undo takes it back, with the ratings open again; then it is rated anew.
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByText('Undone').waitFor();
  await page.getByRole('button', { name: 'even', exact: true }).click();
  await page.getByText('Saved.').waitFor();
  await page.goto(`${server.url}#/today`);
  const done = page.locator('li[data-state="done"]');
  await expect.poll(() => done.count()).toBe(2);

  // The browser is closed; the second day begins cold, without a host, with a changed list that explains itself.
  await page.close();
  await context.close();
  context = await launchProfile(profile.folder);
  await liveAt(context, '2026-03-03T17:00:00');
  page = await context.newPage();
  watchErrors(page, errors);
  await page.goto(server.url);
  const second = await openEntries(page);
  expect(second).not.toEqual(first);
  expect(second.some((text) => text.includes('yesterday'))).toBe(true);

  // The report, as CSV and in print.
  await page.goto(`${server.url}#/report`);
  await page.getByText('Wilma Beispiel').first().waitFor();
  const csv = await downloaded(page, /CSV/);
  const table = parse(csv, { bom: true }) as readonly string[][];
  expect(table.length).toBe(1 + 5 * 11);
  expect(table.flat().filter((cell) => cell === '2026-03-02').length).toBeGreaterThanOrEqual(
    chords,
  );
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('navigation').isVisible()).toBe(false);
  expect(await page.getByText('Wilma Beispiel').first().isVisible()).toBe(true);
  await page.emulateMedia({ media: 'screen' });

  // A backup; then the device is wiped and has forgotten everything; restore brings the same plan again.
  await page.goto(`${server.url}#/settings`);
  const backup = await downloaded(page, /backup/i);
  const cdp = await context.newCDPSession(page);
  await cdp.send('Storage.clearDataForOrigin', {
    origin: server.origin,
    storageTypes: 'indexeddb',
  });
  await page.reload();
  await page.goto(`${server.url}#/today`);
  await page.getByRole('heading', { name: 'Where are you now?' }).waitFor();
  await chooseFile(page, backup);
  await page.getByRole('button', { name: 'Take in', exact: true }).click();
  expect(await openEntries(page)).toEqual(second);
  expect(await entriesOf(page)).toEqual(second);
  expect(errors).toEqual([]);
}, 240_000);
