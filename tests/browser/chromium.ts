/** Finds, installs and starts the Chromium that the tests drive. */
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium, type Browser, type BrowserContext } from 'playwright-core';

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

/** As findChromium(), but as root on Debian it installs the distribution's own first. Throws what to do elsewhere. */
export function needChromium(): string {
  const found = findChromium();
  if (found !== null) return found;
  const canInstall = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (canInstall) {
    const packages = ['chromium', 'fonts-dejavu-core'];
    for (const args of [['update'], ['install', '-y', '--no-install-recommends', ...packages]]) {
      const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
      spawnSync('apt-get', ['-q', ...args], { stdio: ['ignore', 'ignore', 'inherit'], env });
    }
  }
  const installed = findChromium();
  if (installed !== null) return installed;
  throw new Error(
    'no Chromium found: install it (Debian: apt-get install chromium) or set CHROMIUM_PATH',
  );
}

/** A browser without a profile: each context is a private window. */
export function launchBrowser(flags: readonly string[] = []): Promise<Browser> {
  return chromium.launch({ executablePath: needChromium(), args: [...FLAGS, ...flags] });
}

/** A browser whose profile is kept in `folder`: start it again on the same folder to find all that it stored. */
export function launchProfile(
  folder: string,
  flags: readonly string[] = [],
): Promise<BrowserContext> {
  return chromium.launchPersistentContext(folder, {
    executablePath: needChromium(),
    args: [...FLAGS, ...flags],
  });
}
