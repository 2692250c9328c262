/** The playback of a score in the built app. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { ItemId } from '../../shared/music/deck';
import { contextStates, firstIsClosed, keepContexts } from './audio';
import { browseApp } from './browse';
import * as steps from './steps';

const app = browseApp();
let page: Page;

async function openItem(item: ItemId, prepare = keepContexts): Promise<void> {
  ({ page } = await app.newDevice({ serviceWorkers: 'block', prepare }));
  await steps.lookRound(page);
  await steps.show(page, `#/item/${item}`);
  await page.locator('.vf-notehead').first().waitFor();
}

const press = (name: string) => steps.press(page, name);
const marks = () => page.locator('rect.now').count();
const places = (count: number) =>
  page.evaluate(async (least) => {
    const found = new Set<string>();
    while (found.size < least) {
      await new Promise(requestAnimationFrame);
      const mark = document.querySelector('rect.now')?.getAttribute('x');
      if (mark) found.add(mark);
    }
    return [...found].map(Number);
  }, count);

/** All places that are marked until the mark has gone back a number of times. */
const placesInRounds = (count: number) =>
  page.evaluate(async (rounds) => {
    const found = new Set<number>();
    let [last, returns] = [0, 0];
    while (returns < rounds) {
      await new Promise(requestAnimationFrame);
      const mark = document.querySelector('rect.now')?.getAttribute('x');
      if (!mark) continue;
      if (Number(mark) < last) returns += 1;
      last = Number(mark);
      found.add(last);
    }
    return [...found];
  }, count);

describe('the playback of a score', () => {
  it('moves on the staff and the keys while it sounds, and stops', async () => {
    await openItem('d.major-53.together.2');
    expect(await contextStates(page)).toEqual([]);
    expect(await marks()).toBe(0);
    await press('Play');
    const seen = await places(4);
    expect(seen.toSorted((a, b) => a - b)).toEqual(seen);
    expect(await page.locator('[data-now="true"]').count()).toBe(2);
    expect(await contextStates(page)).toEqual(['running']);
    await press('Stop');
    await firstIsClosed(page);
    expect(await marks()).toBe(0);
    expect(await page.locator('[data-now="true"]').count()).toBe(0);
    expect(page.workers()).toEqual([]);
  });

  it('is over by itself after the last note', async () => {
    await openItem('d.major-53.right.2');
    await page.getByLabel('Tempo', { exact: true }).fill('150');
    await press('Play');
    await page.getByRole('button', { name: 'Stop', exact: true }).waitFor();
    await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
    await firstIsClosed(page);
    expect(await marks()).toBe(0);
  });

  it('repeats a stretch, and goes on in another tempo and over all in the same sound output', async () => {
    await openItem('d.major-53.right.2');
    await page.getByLabel('Tempo', { exact: true }).fill('100');
    const choice = page.getByLabel('Repeat');
    await choice.selectOption('the way up');
    await press('Play');
    // Eight notes in two beats; a busy page may not show each of them every time.
    const seen = await placesInRounds(3);
    expect(seen.length).toBeGreaterThan(4);
    expect(seen.length).toBeLessThanOrEqual(8);
    await page.getByLabel('Tempo', { exact: true }).fill('60');
    await choice.selectOption('all of it');
    await places(13);
    expect(await contextStates(page)).toEqual(['running']);
  });

  it('waits when the sound is taken away, and goes on when asked to', async () => {
    await openItem('d.major-53.right.2');
    await page.getByLabel('Repeat').selectOption('all of it');
    await press('Play');
    await places(2);
    await page.evaluate(() => window.contexts[0]!.suspend());
    await press('The sound was interrupted: go on');
    await places(3);
    expect(await contextStates(page)).toEqual(['running']);
  });

  it('says that it has no sound, and moves the place all the same', async () => {
    await openItem('d.major-53.right.2', (device) =>
      device.addInitScript(() => {
        window.AudioContext = class extends AudioContext {
          constructor() {
            super();
            throw new Error('no sound output');
          }
        };
      }),
    );
    await press('Play');
    await page.getByText('This device gives no sound now').waitFor();
    await places(3);
    await press('Stop');
    expect(await marks()).toBe(0);
  });

  it('is silent when one leaves the screen', async () => {
    await openItem('d.major-53.right.2');
    await page.getByLabel('Repeat').selectOption('all of it');
    await press('Play');
    await places(2);
    await page.getByRole('link', { name: 'Map' }).click();
    await firstIsClosed(page);
    expect(page.workers()).toEqual([]);
  });
});
