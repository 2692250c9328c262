/** A microphone that is cut off in the middle of a run of the built app: the run goes on, and it says what came of it. */
import type { BrowserContext } from 'playwright-core';
import { expect, test } from 'vitest';
import { browseApp } from './browse';
import { beginWithoutBeat, prefer, runsIn, toRating, toStand } from './on-stand';
import { begin } from './steps';

declare global {
  interface Window {
    /** The tracks that the page has opened. */
    tracks: MediaStreamTrack[];
  }
}

const app = browseApp(['--use-fake-device-for-media-stream']);

const collectTracks = (context: BrowserContext) =>
  context.addInitScript(() => {
    window.tracks = [];
    // The empty page that a window begins with is not secure, and has none.
    const mediaDevices = navigator.mediaDevices as MediaDevices | undefined;
    if (mediaDevices === undefined) return;
    const ask = mediaDevices.getUserMedia.bind(mediaDevices);
    mediaDevices.getUserMedia = async (wish) => {
      const stream = await ask(wish);
      window.tracks.push(...stream.getTracks());
      return stream;
    };
  });

test('a run is not judged when the microphone was cut off, and the next is heard again', async () => {
  const { page } = await app.newDevice({
    serviceWorkers: 'block',
    permissions: ['microphone'],
    prepare: collectTracks,
  });
  await begin(page);
  await prefer(page, { ear: 'microphone' });
  await toStand(page, ['f.major-53.left.2']);
  await page.getByText('Listening by the microphone').waitFor();
  await beginWithoutBeat(page);
  await page.waitForFunction(() => window.tracks.length === 1);
  const told = page.getByText('The microphone was cut off. The run goes on, but is not judged.');
  // What the browser does when a microphone is unplugged; until the app, which may still be opening it, has heard of it.
  await expect
    .poll(async () => {
      await page.evaluate(() => window.tracks[0]!.dispatchEvent(new Event('ended')));
      return told.count();
    })
    .toBe(1);
  expect(await page.locator('[data-playing="true"]').count()).toBe(1);
  await toRating(page, 1);
  await page.getByText('The microphone was cut off during the run').waitFor();
  expect(await page.getByRole('heading', { name: 'Heard' }).count()).toBe(0);
  expect(await page.evaluate(() => window.tracks[0]!.readyState)).toBe('ended');
  await page.getByRole('button', { name: 'even', exact: true }).click();
  await page.getByText('Saved.').waitFor();
  expect((await runsIn(page))[0]).not.toHaveProperty('take');

  await page.getByText('Listening by the microphone').waitFor();
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.waitForFunction(() => window.tracks.length === 2);
  expect(await page.evaluate(() => window.tracks[1]!.readyState)).toBe('live');
});
