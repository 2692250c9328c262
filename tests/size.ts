/**
 * The size budget, measured on what a first visit really loads: `tsx tests/size.ts [dist]`. Prints a table and fails when
 * a limit is passed, or when a row finds no file, which would make its limit worthless.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

const KB = 1000;

interface Row {
  readonly what: string;
  readonly files: readonly string[];
  readonly bytes: number;
  readonly limit: number;
}

/** The scripts and style sheets that index.html names, with all that those scripts import at once. */
function firstLoad(folder: string): { readonly js: string[]; readonly css: string[] } {
  const html = readFileSync(join(folder, 'index.html'), 'utf8');
  const named = [...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+)"/g)].map(([, path]) => path!);
  const js = new Set<string>();
  const waiting = named.filter((path) => path.endsWith('.js'));
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (js.has(path)) continue;
    js.add(path);
    waiting.push(...importsOf(readFileSync(join(folder, path), 'utf8')));
  }
  return { js: [...js], css: named.filter((path) => path.endsWith('.css')) };
}

/** Imports in built code: `import{a as b}from"./x.js"`, `import"./x.js"`, `export*from"./x.js"`, not `import("./x.js")`. */
function importsOf(code: string): string[] {
  const imports = code.matchAll(/(?:\bfrom|\bimport)\s*["']\.\/([^"']+\.js)["']/g);
  return [...imports].map(([, file]) => `assets/${file}`);
}

/** All that the service worker stores: the paths in the list that the build put into it. */
function storedFiles(folder: string): string[] {
  const worker = readFileSync(join(folder, 'sw.js'), 'utf8');
  return [...worker.matchAll(/"?url"?:\s*"([^"]+)"/g)].map(([, path]) => path!);
}

export function measure(folder: string): Row[] {
  const { js, css } = firstLoad(folder);
  const read = (path: string) => readFileSync(join(folder, path));
  const gzipped = (path: string) => gzipSync(read(path), { level: 9 }).length;
  const worker = readdirSync(folder).filter((name) => name === 'sw.js');
  return [
    rowOf('first load, scripts, gzip', js, gzipped, 60 * KB),
    rowOf('first load, style sheets, gzip', css, gzipped, 12 * KB),
    rowOf('service worker, gzip', worker, gzipped, 10 * KB),
    rowOf('all that is stored for offline use, gzip', storedFiles(folder), gzipped, 700 * KB),
  ];
}

const rowOf = (
  what: string,
  files: readonly string[],
  size: (path: string) => number,
  limit: number,
): Row => ({ what, files, bytes: files.reduce((sum, path) => sum + size(path), 0), limit });

export const isWithin = ({ files, bytes, limit }: Row): boolean =>
  files.length > 0 && bytes <= limit;

function print(row: Row): void {
  const size = `${(row.bytes / KB).toFixed(1)} of ${row.limit / KB} kB`;
  const files = row.files.length === 1 ? '1 file' : `${row.files.length} files`;
  console.log(`${isWithin(row) ? 'ok  ' : 'OVER'} ${row.what}: ${size} (${files})`);
}

if (process.argv[1]?.endsWith('size.ts')) {
  const rows = measure(process.argv[2] ?? 'dist');
  rows.forEach(print);
  process.exitCode = rows.every(isWithin) ? 0 : 1;
}
