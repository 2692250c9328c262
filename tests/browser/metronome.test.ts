import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { contextStates, firstIsClosed, keepContexts } from './audio';
import { browseHarness } from './browse';
import * as steps from './steps';

// No flag that lets a page sound unasked: that it may not is part of the test.
const harness = browseHarness('tests/sound/harness.ts');
let page: Page;

beforeEach(async () => {
  ({ page } = await harness.newDevice({ prepare: keepContexts }));
});

const press = (name: string) => steps.press(page, name);
const stateOf = () => page.evaluate(() => window.soundHarness.state());
const beats = () => page.evaluate(() => window.soundHarness.beats);

async function waitForBeats(count: number): Promise<void> {
  await page.waitForFunction((least) => window.soundHarness.beats.length >= least, count);
}

const waitForState = (state: string) =>
  page.waitForFunction((wanted) => window.soundHarness.state() === wanted, state);

describe('the clicks, rendered offline for two minutes', () => {
  it.each([
    { beatsPerMinute: 40, sampleRate: 48_000, beatsPerBar: 4 },
    { beatsPerMinute: 137, sampleRate: 48_000, beatsPerBar: 4 },
    { beatsPerMinute: 137, sampleRate: 44_100, beatsPerBar: 3 },
    { beatsPerMinute: 240, sampleRate: 48_000, beatsPerBar: 4 },
  ])(
    'fall on the first sample of each beat: $beatsPerMinute a minute at $sampleRate Hz',
    async ({ beatsPerMinute, sampleRate, beatsPerBar }) => {
      const countInBeats = 4;
      const beatLength = 60 / beatsPerMinute;
      // No whole number of samples, so that rounding must show if there is any.
      const start = 0.123_456_7 + countInBeats * beatLength;
      const seconds = start + 120;
      const clicks = await page.evaluate((task) => window.soundHarness.renderClicks(task), {
        sampleRate,
        seconds,
        grid: { start, beatsPerMinute, countInBeats, beatsPerBar },
      });

      // The beat at the very end of the two minutes is no longer in the sound.
      expect(clicks).toHaveLength(countInBeats + 2 * beatsPerMinute);
      const samplesOff = clicks.map(
        ({ sample }, n) => sample - (start + (n - countInBeats) * beatLength) * sampleRate,
      );
      // A click begins with the first sample that is not before its beat.
      expect(Math.min(...samplesOff)).toBeGreaterThan(-0.001);
      expect(Math.max(...samplesOff)).toBeLessThan(1.001);

      const isOnBar = (n: number) => (n - countInBeats) % beatsPerBar === 0;
      const peaks = (wanted: boolean) =>
        clicks.filter((_, n) => isOnBar(n) === wanted).map(({ peak }) => peak);
      const [accents, others] = [peaks(true), peaks(false)];
      expect(Math.min(...accents)).toBeGreaterThan(1.3 * Math.max(...others));
      // Two clicks on one beat would be twice as loud as the rest of their kind.
      for (const kind of [accents, others]) {
        expect(Math.max(...kind)).toBeLessThan(1.1 * Math.min(...kind));
      }
    },
  );
});

describe('the live metronome', () => {
  it('makes no AudioContext before a real click, and sounds after it', async () => {
    expect(await contextStates(page)).toEqual([]);
    await press('Start');
    await waitForBeats(8);
    expect(await contextStates(page)).toEqual(['running']);
    expect(await stateOf()).toBe('running');
    const seen = await beats();
    expect(seen.map((beat) => beat.index)).toEqual(seen.map((_, place) => place - 2));
    expect(seen.slice(0, 7).map((beat) => beat.isAccent)).toEqual(
      [-2, -1, 0, 1, 2, 3, 4].map((index) => index % 4 === 0),
    );
  });

  it('waits when the sound is taken away, and goes on where it stood', async () => {
    await press('Start');
    await waitForBeats(4);
    await page.evaluate(() => window.contexts[0]!.suspend());
    await waitForState('interrupted');
    const before = (await beats()).length;
    await press('Resume');
    await waitForState('running');
    await waitForBeats(before + 4);
    const seen = await beats();
    expect(seen.map((beat) => beat.index)).toEqual(seen.map((_, place) => place - 2));
  });

  it('hands the next clicks to the audio clock as soon as the page is hidden', async () => {
    await press('Start');
    await waitForBeats(2);
    const secondsAhead = await page.evaluate(() => {
      const starts: number[] = [];
      const { start } = AudioBufferSourceNode.prototype;
      AudioBufferSourceNode.prototype.start = function startAndTell(when = 0) {
        starts.push(when);
        start.call(this, when);
      };
      // Playwright keeps every page visible.
      Object.defineProperty(document, 'hidden', { value: true });
      document.dispatchEvent(new Event('visibilitychange'));
      return Math.max(...starts) - window.contexts[0]!.currentTime;
    });
    expect(secondsAhead).toBeGreaterThan(1.5);
  });

  it('leaves nothing behind when it is stopped', async () => {
    await press('Start');
    await waitForBeats(2);
    expect(page.workers()).toHaveLength(1);
    await press('Stop');
    const count = (await beats()).length;
    await firstIsClosed(page);
    expect(await stateOf()).toBe('stopped');
    expect(page.workers()).toEqual([]);
    expect(await beats()).toHaveLength(count);
  });

  it('beats without sound on the same grid, and leaves the sound output alone', async () => {
    await press('Start without sound');
    await waitForBeats(8);
    const seen = await beats();
    expect(await contextStates(page)).toEqual([]);
    expect(await stateOf()).toBe('running');
    for (const { index, at } of seen) expect(at).toBeCloseTo(seen[0]!.at + (index + 2) * 250, 6);
  });
});
