/** The playback of a score in the built app. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { ItemId } from '../../shared/music/deck';
import { serveApp, type AppServer } from './app';
import { launchBrowser } from './chromium';

declare global {
  interface Window {
    /** Every AudioContext that the page has made. */
    contexts: AudioContext[];
  }
}

let server: AppServer;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  server = await serveApp();
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
  await server.kill();
});

beforeEach(async () => {
  page = await browser.newPage({ serviceWorkers: 'block' });
  await page.addInitScript(() => {
    window.contexts = [];
    window.AudioContext = class extends AudioContext {
      constructor(options?: AudioContextOptions) {
        super(options);
        window.contexts.push(this);
      }
    };
  });
});

afterEach(() => page.close());

async function openItem(item: ItemId): Promise<void> {
  await page.goto(server.url);
  await page.getByRole('button', { name: 'Look round' }).click();
  await page.locator('[data-ready="today"]').waitFor();
  await page.evaluate((id) => {
    location.hash = `#/item/${id}`;
  }, item);
  await page.locator('.vf-notehead').first().waitFor();
}

const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
const contextStates = () => page.evaluate(() => window.contexts.map(({ state }) => state));
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
    expect(await contextStates()).toEqual([]);
    expect(await marks()).toBe(0);
    await press('Play');
    const seen = await places(4);
    expect(seen.toSorted((a, b) => a - b)).toEqual(seen);
    expect(await page.locator('[data-now="true"]').count()).toBe(2);
    expect(await contextStates()).toEqual(['running']);
    await press('Stop');
    await page.waitForFunction(() => window.contexts[0]!.state === 'closed');
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
    await page.waitForFunction(() => window.contexts[0]!.state === 'closed');
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
    expect(await contextStates()).toEqual(['running']);
  });

  it('waits when the sound is taken away, and goes on when asked to', async () => {
    await openItem('d.major-53.right.2');
    await page.getByLabel('Repeat').selectOption('all of it');
    await press('Play');
    await places(2);
    await page.evaluate(() => window.contexts[0]!.suspend());
    await press('The sound was interrupted: go on');
    await places(3);
    expect(await contextStates()).toEqual(['running']);
  });

  it('says that it has no sound, and moves the place all the same', async () => {
    await page.addInitScript(() => {
      window.AudioContext = class extends AudioContext {
        constructor() {
          super();
          throw new Error('no sound output');
        }
      };
    });
    await openItem('d.major-53.right.2');
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
    await page.waitForFunction(() => window.contexts[0]!.state === 'closed');
    expect(page.workers()).toEqual([]);
  });
});
