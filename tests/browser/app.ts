/** What most browser tests begin with: the built app on a host of its own, open in a page. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { inject } from 'vitest';
import { APP_PATH } from './app-path';
import { startServer, type Server } from './server';

/** The folder of the built app. */
export const siteFolder = (): string => inject('site');

/** The built app under its sub-path on a host of its own; more folders by path where a test needs them. */
export async function serveApp(more: Readonly<Record<string, string>> = {}): Promise<AppServer> {
  const server = await startServer({ [APP_PATH]: siteFolder(), ...more });
  return { ...server, url: `${server.origin}${APP_PATH}` };
}

export interface AppServer extends Server {
  /** The address of the app, with a slash at the end. */
  readonly url: string;
}

/** A profile folder that can be given to launchProfile() again and again; remove() at the end. */
export function newProfile(): { readonly folder: string; remove(): void } {
  const folder = mkdtempSync(join(tmpdir(), 'arpeggiary-profile-'));
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }) };
}

/** Opens the app (or a screen of it: "#/map") in a new page and waits until its worker has stored everything. */
export async function openInstalled(context: BrowserContext, url: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(url);
  await installed(page);
  return page;
}

/** Waits until the worker has stored everything, and lets it answer for the page. */
export async function installed(page: Page): Promise<void> {
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.reload();
}

/** Collects what must stay empty in a normal session: uncaught errors and everything that the console calls an error. */
export function watchErrors(page: Page, errors: string[] = []): string[] {
  page.on('pageerror', (error) => errors.push(`uncaught: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  return errors;
}

/**
 * Passes the clock in: pages opened or reloaded from now on live at another time, at which it goes on as usual. Only the
 * calendar moves; the beat has a clock of its own.
 */
export const liveAt = (context: BrowserContext, time: string): Promise<unknown> =>
  context.addInitScript((start) => {
    const shift = start - Date.now();
    const Real = Date;
    globalThis.Date = class extends Real {
      constructor(...parts: [] | ConstructorParameters<DateConstructor>) {
        if (parts.length === 0) super(Real.now() + shift);
        else super(...(parts as [number]));
      }
      static override now(): number {
        return Real.now() + shift;
      }
    } as DateConstructor;
  }, Date.parse(time));
