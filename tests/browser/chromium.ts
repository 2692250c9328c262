/** Finds, installs and starts the Chromium that the tests drive. */
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium, type Browser, type BrowserContext } from 'playwright-core';
import { need, type Program } from '../install';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const APPLICATIONS = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Milliseconds that anything may take on a busy machine. */
export const PATIENCE = 120_000;

/** The path of a Chromium: CHROMIUM_PATH, else the first of the usual names on PATH; null where there is none. */
export function findChromium(): string | null {
  const named = process.env.CHROMIUM_PATH;
  if (named !== undefined && named !== '') return named;
  const folders = (process.env.PATH ?? '').split(delimiter);
  const candidates = folders.flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return [...candidates, ...APPLICATIONS].find(isProgram) ?? null;
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

export const CHROMIUM: Program = {
  isThere: () => findChromium() !== null,
  packages: ['chromium', 'fonts-dejavu-core'],
};

/** As findChromium(), but as root on Debian it installs the distribution's own first. Throws what to do elsewhere. */
function needChromium(): string {
  need(CHROMIUM);
  return findChromium()!;
}

/** A browser without a profile: each context is a private window. */
export function launchBrowser(flags: readonly string[] = []): Promise<Browser> {
  return chromium.launch({
    executablePath: needChromium(),
    args: [...FLAGS, ...flags],
    timeout: PATIENCE,
  });
}

/** A browser whose profile is kept in `folder`: start it again on the same folder to find all that it stored. */
export async function launchProfile(
  folder: string,
  flags: readonly string[] = [],
): Promise<BrowserContext> {
  const context = await chromium.launchPersistentContext(folder, {
    executablePath: needChromium(),
    args: [...FLAGS, ...flags],
    timeout: PATIENCE,
  });
  context.setDefaultTimeout(PATIENCE);
  return context;
}
