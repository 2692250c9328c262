/** What a file of browser tests begins and ends with: a host, a browser, and devices on which nothing may go wrong. */
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { serveApp, watchErrors } from './app';
import { launchBrowser, PATIENCE } from './chromium';
import { buildHarness } from './harness';
import { startServer, type Server } from './server';

/** A private window: nothing is stored in it yet, and it is closed after the test. */
export interface Device {
  readonly context: BrowserContext;
  readonly page: Page;
  /** What any of its pages told of: see watchErrors(). */
  readonly errors: readonly string[];
}

export interface Browsing {
  readonly browser: Browser;
  /** The address of the page that is served, with a slash at the end. */
  readonly url: string;
  /** A new device that shows the page. The test fails in the end if any page of it told of an error. */
  newDevice(options?: DeviceOptions): Promise<Device>;
}

export interface DeviceOptions extends BrowserContextOptions {
  /** What it shows, unless it is the page that is served. */
  readonly url?: string;
  /** Done to it before it shows anything. */
  readonly prepare?: (context: BrowserContext) => Promise<unknown>;
}

type Host = Server & { readonly url: string };

function browse(serve: () => Promise<Host>, flags: readonly string[]): Browsing {
  let browser: Browser;
  let host: Host;
  let devices: Device[] = [];

  beforeAll(async () => {
    host = await serve();
    browser = await launchBrowser(flags);
  });
  afterEach(async () => {
    const used = devices;
    devices = [];
    await Promise.all(used.map(({ context }) => context.close()));
    expect(used.flatMap(({ errors }) => errors)).toEqual([]);
  });
  afterAll(async () => {
    await browser.close();
    await host.kill();
  });

  return {
    get browser() {
      return browser;
    },
    get url() {
      return host.url;
    },
    newDevice: async ({ url = host.url, prepare, ...options } = {}) => {
      const context = await browser.newContext(options);
      context.setDefaultTimeout(PATIENCE);
      const errors: string[] = [];
      context.on('page', (opened) => watchErrors(opened, errors));
      await prepare?.(context);
      const device = { context, errors, page: await context.newPage() };
      devices.push(device);
      await device.page.goto(url);
      return device;
    },
  };
}

/** The built app. */
export const browseApp = (flags: readonly string[] = []): Browsing =>
  browse(() => serveApp(), flags);

/** A page of our own: see buildHarness(). */
export const browseHarness = (entry: string): Browsing =>
  browse(async () => {
    const server = await startServer({ '/': await buildHarness(entry) });
    return { ...server, url: `${server.origin}/` };
  }, []);
