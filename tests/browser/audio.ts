/** The sound outputs that a page opens. */
import type { BrowserContext, Page } from 'playwright-core';

declare global {
  interface Window {
    /** Every AudioContext that the page has made. */
    contexts: AudioContext[];
  }
}

/** Keeps them on every page of a device that is opened from now on. */
export const keepContexts = (device: BrowserContext) =>
  device.addInitScript(() => {
    window.contexts = [];
    window.AudioContext = class extends AudioContext {
      constructor(options?: AudioContextOptions) {
        super(options);
        window.contexts.push(this);
      }
    };
  });

export const contextStates = (page: Page): Promise<readonly AudioContextState[]> =>
  page.evaluate(() => window.contexts.map(({ state }) => state));

/** Waits until the first has been given up. */
export const firstIsClosed = (page: Page) =>
  page.waitForFunction(() => window.contexts[0]!.state === 'closed');
