/** Deploys for the tests: copies of the built app that differ as two releases, a broken release or a kill switch would. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { addWorker } from '../../service-worker/build';
import { siteFolder } from './app';

export interface Deploy {
  readonly folder: string;
  /** Path of the script that only this deploy has, from the folder. */
  readonly script: string;
  remove(): void;
}

/** A copy of the built app with one more script in its page; `name` tells it from other deploys. */
export async function deployWith(name: string, script: string): Promise<Deploy> {
  const folder = mkdtempSync(join(tmpdir(), 'arpeggiary-deploy-'));
  cpSync(siteFolder(), folder, { recursive: true });
  // The name has eight characters at its end as a hash has, so the worker takes it for a file that never changes.
  const path = `assets/extra-${name.padStart(8, '0')}.js`;
  writeFileSync(join(folder, path), script);
  changeFile(join(folder, 'index.html'), (html) =>
    html.replace('</head>', `<script type="module" src="./${path}"></script></head>`),
  );
  await addWorker(folder);
  return { folder, script: path, remove: () => rmSync(folder, { recursive: true }) };
}

/** A release that says its number in `document.documentElement.dataset.release`. */
export const deployRelease = (number: number): Promise<Deploy> =>
  deployWith(String(number), `document.documentElement.dataset.release = '${number}';`);

export function changeFile(file: string, change: (text: string) => string): void {
  writeFileSync(file, change(readFileSync(file, 'utf8')));
}

/** What the worker of a site folder must keep, by the file system: paths from the folder, sorted. */
export function filesToKeep(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .filter((path) => path !== 'sw.js' && !/\.map$|\.png$|^icons\/maskable\.svg$/.test(path))
    .toSorted();
}
