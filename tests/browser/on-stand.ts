/** An entry on the music stand of the built app, played without a beat, and what the log holds of it. */
import type { Page } from 'playwright-core';
import type { RunEvent } from '../../shared/log/events';
import { type ItemId, itemOf } from '../../shared/music/deck';

/** Puts an entry on the stand, as the app keeps one that was begun, and opens the stand without a beat. */
export async function toStand(page: Page, items: readonly ItemId[]): Promise<void> {
  const { note, way } = itemOf(items[0]!);
  const kind = items.length > 1 ? 'round' : 'single';
  await page.evaluate(
    (entry) =>
      new Promise<void>((done) => {
        const opening = indexedDB.open('arpeggiary');
        opening.onsuccess = () => {
          const database = opening.result;
          const writing = database.transaction('kept', 'readwrite');
          const day = new Date().toLocaleDateString('sv');
          const rest = { day, at: 0, phase: 'playing', tempo: 240, pedal: false, ratings: {} };
          writing.objectStore('kept').put({ entry, ...rest }, 'session');
          writing.oncomplete = () => {
            database.close();
            done();
          };
        };
      }),
    { key: 'test', kind, note, way, items },
  );
  await page.evaluate(() => {
    location.hash = '#/play';
  });
  await page.reload();
  await page.locator('[data-stand]').waitFor();
}

/** Keeps preferences on the device, for the next opening. */
export const prefer = (page: Page, preferences: Readonly<Record<string, unknown>>) =>
  page.evaluate(
    (wish) =>
      new Promise<void>((done) => {
        const opening = indexedDB.open('arpeggiary');
        opening.onsuccess = () => {
          const writing = opening.result.transaction('kept', 'readwrite');
          writing.objectStore('kept').put(wish, 'preferences');
          writing.oncomplete = () => {
            opening.result.close();
            done();
          };
        };
      }),
    preferences,
  );

export async function beginWithoutBeat(page: Page): Promise<void> {
  const beat = page.getByRole('group', { name: 'Beat' });
  await beat.getByRole('radio', { name: 'off' }).check();
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.locator('[data-playing="true"]').waitFor();
}

export async function toRating(page: Page, chords: number): Promise<void> {
  for (let i = 0; i < chords; i++) await page.keyboard.press('PageDown');
  await page.getByRole('heading', { name: 'How did it go?' }).waitFor();
}

/** The runs in the log of the device. */
export const runsIn = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<readonly RunEvent[]>((done) => {
        const opening = indexedDB.open('arpeggiary');
        opening.onsuccess = () => {
          const all = opening.result.transaction('events').objectStore('events').getAll();
          all.onsuccess = () => {
            const events = (all.result as { event: RunEvent }[]).map(({ event }) => event);
            opening.result.close();
            done(events.filter(({ kind }) => kind === 'run'));
          };
        };
      }),
  );
