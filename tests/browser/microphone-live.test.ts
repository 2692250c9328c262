/** A run by the microphone while it goes on, on the built app: a rendered piano is played into the browser. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { ItemId } from '../../shared/music/deck';
import { browseApp } from './browse';
import { heardFile, played } from './heard-file';
import { prefer, toStand } from './on-stand';
import { begin } from './steps';

declare global {
  interface Window {
    /** The most lights that were lit while each arpeggio was shown, by its heading, in the order in which they came. */
    lights: Map<string, number>;
  }
}

const ROUND: readonly ItemId[] = ['e.major-53.together.2', 'e.minor-53.together.2'];
/** Notes of each arpeggio; the last of the first is the first of the second. */
const NOTES = 26;

const heard = heardFile('once');
const app = browseApp(heard.flags);

/** Writes down what is lit under which heading, frame by frame. */
const watchLights = (page: Page) =>
  page.evaluate(() => {
    window.lights = new Map();
    const look = () => {
      const heading = document.querySelector('[data-stand] h1')?.textContent;
      if (heading) {
        const lit = document.querySelectorAll('.lit').length;
        window.lights.set(heading, Math.max(lit, window.lights.get(heading) ?? 0));
      }
      requestAnimationFrame(look);
    };
    look();
  });

test('a run heard by the microphone lights up its notes, turns the page and ends by itself', async () => {
  heard.play(played(ROUND, { wrong: [{ step: 3, hand: 'left', by: 1 }] }, 1));
  const { page } = await app.newDevice({
    viewport: { width: 1024, height: 768 },
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
    permissions: ['microphone'],
  });
  await begin(page);
  await prefer(page, { picture: 'staff', beat: 'off' });
  await toStand(page, ROUND);
  const turns = page.getByRole('group', { name: 'The page turns' });
  expect(await turns.count()).toBe(0);
  await page.getByRole('button', { name: 'Listen by the microphone' }).click();
  await page.getByText('Listening by the microphone').waitFor();
  await turns.getByRole('radio', { name: 'with you' }).check();
  await watchLights(page);
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('heading', { name: 'How did it go?' }).waitFor();
  await page.getByText('Left hand, going up: F for E').waitFor();

  const lights = await page.evaluate(() => [...window.lights]);
  expect(lights.map(([heading]) => /major|minor/.exec(heading)?.[0])).toEqual(['major', 'minor']);
  const [first, both] = lights.map(([, lit]) => lit) as [number, number];
  // It is turned at the last note, when those of the last third of a second are still dark.
  expect(first).toBeGreaterThanOrEqual(NOTES - 2 - 5);
  expect(first).toBeLessThanOrEqual(NOTES - 1);
  // All but the wrong one, and at most one of the upper notes.
  expect(both).toBeGreaterThanOrEqual(2 * NOTES - 2 - 2);
  expect(both).toBeLessThanOrEqual(2 * NOTES - 2 - 1);
});
