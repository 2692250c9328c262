/**
 * The teacher's half on the built app: a rating and a wish in the lesson, an examination by a known number, and the report
 * as a PDF and as a page, with the network gone.
 */
import type { BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { factsOf, needPoppler, textOf } from '../report/poppler';
import { newProfile, openInstalled, serveApp, watchErrors, type AppServer } from './app';
import { launchProfile } from './chromium';
import { faultsOf } from './faults';
import { begin, BETWEEN_MARKS, downloaded, overflowOf, press, show } from './steps';

const profile = newProfile();
let server: AppServer;
let context: BrowserContext;

beforeAll(async () => {
  needPoppler();
  server = await serveApp();
  context = await launchProfile(profile.folder);
});

afterAll(async () => {
  await context.close();
  await server.kill();
  profile.remove();
});

test('lesson, examination and report, all of it offline', async () => {
  const page = await openInstalled(context, server.url);
  const errors = watchErrors(page);
  await page.getByLabel(/What the student is called/).fill('Ono Muster');
  await begin(page);
  await context.setOffline(true);

  await show(page, '#/lesson/d.major-6.right.2');
  await press(page, 'uneven');
  await page.getByText(/^Rated uneven at/).waitFor();
  await press(page, 'Ask for it tomorrow');
  await page.getByRole('button', { name: 'Asked for: take back' }).waitFor();
  await page.getByLabel('New remark').fill('Thumb late.');
  await press(page, 'Save remark');
  await page.getByText('Teacher, ').waitFor();

  await page.setViewportSize({ width: 390, height: 844 });
  await show(page, '#/examination');
  await page.getByText('per cent today').waitFor();
  expect((await overflowOf(page)).across).toBeLessThanOrEqual(0);
  await page.getByLabel(/^Number of the draw/).fill('20614');
  await page.getByRole('radio', { name: 'with a beat' }).check();
  await page.getByText('per cent today').waitFor();
  await press(page, 'Begin');
  await page.getByText('Examination, 1 of 6').waitFor();
  expect(await faultsOf(page)).toEqual([]);
  await press(page, 'Give the beat');
  await press(page, 'Stop the beat');
  for (let at = 1; at <= 6; at++) {
    await page.getByText(`Examination, ${at} of 6`).waitFor();
    await page.waitForTimeout(BETWEEN_MARKS);
    await press(page, at === 2 ? 'stopped' : 'even');
  }
  await page.getByRole('heading', { name: 'Passed' }).waitFor();
  expect((await overflowOf(page)).across).toBeLessThanOrEqual(0);
  expect(await faultsOf(page)).toEqual([]);
  await press(page, 'Keep the examination');
  await page.getByRole('button', { name: 'Draw 20614 again' }).waitFor();
  expect((await overflowOf(page)).across).toBeLessThanOrEqual(0);
  expect(await faultsOf(page)).toEqual([]);

  await page.setViewportSize({ width: 1024, height: 768 });
  await show(page, '#/report');
  await page.getByRole('heading', { name: 'Chance to pass' }).waitFor();
  expect((await overflowOf(page)).across).toBeLessThanOrEqual(0);
  const pdf = await downloaded(page, 'Save as PDF');
  await page.getByText('The next report will tell what has changed since.').waitFor();
  expect(factsOf(pdf).get('Title')).toMatch(/^Readiness report, Ono Muster, /);
  expect(factsOf(pdf).get('Tagged')).toBe('yes');
  const words = textOf(pdf).replaceAll(/\s+/g, ' ');
  expect(words).toContain('Chance to pass');
  expect(words).toContain('At the present pace');
  expect(words).toContain('1 of 1 passed');
  expect(words).toContain('D, major 6 (right 2 oct.): Thumb late.');

  const html = (await downloaded(page, 'Save as a page (HTML)')).toString('utf8');
  const plain = await context.newPage();
  await plain.setContent(html);
  expect(await plain.title()).toMatch(/^Readiness report, Ono Muster, /);
  // By stage, the weakest, by week, and the examination; there is no week yet to compare with.
  expect(await plain.getByRole('table').count()).toBe(4);
  expect(await faultsOf(plain)).toEqual([]);
  expect(errors).toEqual([]);
});
