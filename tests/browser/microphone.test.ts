/** Listening by the microphone on the built app: a rendered piano is played into the browser, or the browser refuses. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Sound } from '../../shared/listening/sound/spectrum';
import type { ItemId } from '../../shared/music/deck';
import { retuned } from '../listening/sound/spoil';
import { browseApp, type Browsing } from './browse';
import { heardFile, louder, played } from './heard-file';
import { beginWithoutBeat, runsIn, toRating, toStand } from './on-stand';
import { begin } from './steps';

declare global {
  interface Window {
    /** How many sounds the page has started. */
    clicks: number;
  }
}

const LEFT: readonly ItemId[] = ['f.major-53.left.2'];
const TOGETHER: readonly ItemId[] = ['c.major-53.together.2'];

const listen = (page: Page) => page.getByRole('button', { name: 'Listen by the microphone' });

/** A new student's stand with an entry, in a browser that was granted something. */
async function standOf(app: Browsing, items: readonly ItemId[], granted: string): Promise<Page> {
  const { page } = await app.newDevice({
    viewport: { width: 1024, height: 768 },
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
    permissions: [granted],
  });
  await begin(page);
  await toStand(page, items);
  return page;
}

const UNHEARD: Readonly<Record<string, readonly [(sound: Sound) => Sound, RegExp]>> = {
  'an empty room': [
    (sound) => louder(0, sound),
    /not heard, so it was not judged: move the device nearer/,
  ],
  // 415 Hz, as old instruments are tuned: a semitone lower than the notes on the page.
  'a piano a semitone too low': [
    (sound) => retuned(sound, 1200 * Math.log2(415 / 440)),
    /not heard, so it was not judged: .*check the room and the piano in the settings/,
  ],
};

describe('the microphone', () => {
  const heard = heardFile('once');
  const app = browseApp(heard.flags);

  async function listening(items: readonly ItemId[]): Promise<Page> {
    const page = await standOf(app, items, 'microphone');
    await listen(page).click();
    await page.getByText('Listening by the microphone').waitFor();
    return page;
  }

  test('hears a clean run as one, and only the measures are kept', async () => {
    const length = heard.play(played(TOGETHER));
    const page = await listening(TOGETHER);
    await beginWithoutBeat(page);
    await page.waitForTimeout(length + 500);
    await toRating(page, 1);
    await page.getByText(/nothing stands out/i).waitFor();
    await page.waitForTimeout(1000);
    await page.keyboard.press('PageDown');
    await page.getByText('Saved.').waitFor();
    const [run] = await runsIn(page);
    expect(run!.take).toMatchObject({ source: 'microphone', faults: [] });
    // An upper note of an octave may not be sure, and is then not counted.
    expect(run!.take!.notes).toBeGreaterThanOrEqual(22);
    expect(run!.take!.right).toBe(run!.take!.notes);
    expect(run!.take!.tempo).toBeGreaterThan(316);
    expect(run!.take!.tempo).toBeLessThan(324);
    expect(JSON.stringify(run).length).toBeLessThan(1500);
  });

  test('hears where a run waited, while the beat sounds only as it counts in', async () => {
    // The count-in takes four seconds.
    heard.play(played(LEFT, { waits: [{ step: 9, seconds: 0.16 }] }, 4));
    const page = await listening(LEFT);
    await page.evaluate(() => {
      const { start } = AudioBufferSourceNode.prototype;
      window.clicks = 0;
      AudioBufferSourceNode.prototype.start = function (...when) {
        window.clicks += 1;
        start.apply(this, when);
      };
    });
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.getByRole('heading', { name: 'Heard' }).waitFor();
    // A machine that is too busy leaves out a click for which it is too late.
    const clicks = await page.evaluate(() => window.clicks);
    expect(clicks).toBeGreaterThan(0);
    expect(clicks).toBeLessThanOrEqual(4);
    await page.getByText('Going down: it waits 0.1').waitFor();
    expect(await page.getByRole('img', { name: /left hand note by note: 1 waits/ }).count()).toBe(
      1,
    );
  });

  test.each(Object.entries(UNHEARD))(
    'that hears %s in a run does not judge it, and says what to do',
    async (_, [change, told]) => {
      const length = heard.play(change(played(LEFT)));
      const page = await listening(LEFT);
      await beginWithoutBeat(page);
      await page.waitForTimeout(length);
      await toRating(page, 1);
      await page.getByText(told).waitFor();
      expect(await page.getByRole('heading', { name: 'Heard' }).count()).toBe(0);
    },
  );

  test('that is refused is said, and the run goes on as ever', async () => {
    const page = await standOf(app, LEFT, 'geolocation');
    await listen(page).click();
    await page.getByText(/does not let this app use the microphone/).waitFor();
    await page.getByRole('button', { name: 'Do not listen' }).click();
    await listen(page).waitFor();
    await beginWithoutBeat(page);
    await toRating(page, 1);
    expect(await page.getByRole('heading', { name: 'Heard' }).count()).toBe(0);
  });
});

describe('a device without a microphone', () => {
  const app = browseApp();

  test('says so, and what to do', async () => {
    const page = await standOf(app, LEFT, 'microphone');
    await listen(page).click();
    await page.getByText(/no microphone here.*connect one, then try again/).waitFor();
    expect(await page.getByRole('button', { name: 'Try again' }).count()).toBe(1);
  });
});
