import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { randomBytes } from 'node:crypto';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { isWithin, measure } from './size';

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'arpeggiary-size-'));
  mkdirSync(join(folder, 'assets'));
  write('index.html', '<script src="./assets/a.js"></script><link href="./assets/a.css">');
  write('assets/a.js', 'import{b}from"./b.js";const later=()=>import("./later.js");');
  write('assets/b.js', 'import"./c.js";export{b}from"./a.js";');
  write('assets/c.js', 'export const c=1;');
  write('assets/later.js', 'export const later=1;');
  write('assets/a.css', 'p{margin:0}');
  write('sw.js', '[{"url":"index.html"},{"url":"assets/a.js"}]');
});

afterEach(() => rmSync(folder, { recursive: true }));

const write = (path: string, text: string | Buffer) => writeFileSync(join(folder, path), text);
const row = (what: string) => measure(folder).find((one) => one.what.includes(what))!;

test('the first load is what the page names and what that imports, without the lazy parts', () => {
  expect(row('scripts').files.toSorted()).toEqual(['assets/a.js', 'assets/b.js', 'assets/c.js']);
  expect(row('style').files).toEqual(['assets/a.css']);
  expect(row('stored').files).toEqual(['index.html', 'assets/a.js']);
  expect(measure(folder).every(isWithin)).toBe(true);
});

test('too much is found', () => {
  write('assets/c.js', `//${randomBytes(60_000).toString('base64')}`);
  expect(isWithin(row('scripts'))).toBe(false);
});

test('a limit on nothing is a failure', () => {
  write('index.html', '<script src="./assets/a.js"></script>');
  expect(row('style')).toMatchObject({ files: [], bytes: 0 });
  expect(isWithin(row('style'))).toBe(false);
});
