/**
 * Builds the app as `npm run build` does, but into a folder of its own: so the tests never drive an old build, and two
 * runs at once do not get in each other's way. As the set-up of the browser tests it does so once for all of them.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import type { TestProject } from 'vitest/node';
import { APP_PATH } from './app-path';

declare module 'vitest' {
  interface ProvidedContext {
    /** The folder of the built app. */
    readonly site: string;
  }
}

/** Builds for APP_PATH and returns the folder, which the caller removes. */
export function buildSite(): string {
  mkdirSync('.build', { recursive: true });
  const site = resolve(mkdtempSync('.build/site-'));
  // Its own process: the test runner sets NODE_ENV, which would make it a development build.
  const env = { ...process.env, NODE_ENV: 'production', APP_PATH };
  execFileSync('npx', ['tsx', 'service-worker/build.ts', '--out', site], { env, stdio: 'inherit' });
  return site;
}

export default function setup(project: TestProject): () => void {
  const site = buildSite();
  project.provide('site', site);
  return () => rmSync(site, { recursive: true });
}
