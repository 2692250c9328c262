/** The web app manifest: what browsers need of it, and that every file it names is what it says. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { BACKUP_EXTENSION, BACKUP_MIME, backupFileName } from '../shared/formats/backup';
import { offerFileName } from '../shared/formats/programme-offer';

interface Picture {
  readonly src: string;
  readonly sizes: string;
  readonly type: string;
  readonly purpose?: string;
  readonly form_factor?: 'wide' | 'narrow';
  readonly label?: string;
}

interface Manifest {
  readonly [member: string]: unknown;
  readonly description: string;
  readonly icons: readonly Picture[];
  readonly screenshots?: readonly Picture[];
  readonly shortcuts: readonly {
    readonly name: string;
    readonly url: string;
    readonly icons: readonly Picture[];
  }[];
}

const FOLDER = 'manifest';
const manifest = JSON.parse(readFileSync(join(FOLDER, 'app.webmanifest'), 'utf8')) as Manifest;

/** "192x192" out of the header of a PNG file (PNG specification, 11.2.1: the image header comes first). */
function pngSize(file: string): string {
  const bytes = readFileSync(file);
  if (bytes.toString('latin1', 1, 4) !== 'PNG') return 'no PNG file';
  return `${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`;
}

test('it has what makes it installable (web.dev, install criteria) and stays in its folder', () => {
  expect(manifest).toMatchObject({
    name: 'Arpeggiary',
    short_name: 'Arpeggiary',
    start_url: './',
    scope: './',
    display: 'standalone',
  });
  expect(manifest.prefer_related_applications).toBeUndefined();
  // The install dialog cuts it at about 324 characters.
  expect(manifest.description.length).toBeLessThanOrEqual(300);
});

test('the system gives it the files that it makes itself, and recordings', () => {
  const rest = { action: './', launch_type: 'single-client' };
  expect(manifest['file_handlers']).toEqual([
    { ...rest, accept: { [BACKUP_MIME]: [BACKUP_EXTENSION] } },
    { ...rest, accept: { 'audio/midi': ['.mid', '.midi'] } },
  ]);
  expect(backupFileName('2026-11-25').endsWith(BACKUP_EXTENSION)).toBe(true);
  expect(offerFileName('Ada', '2026-11-25').endsWith(BACKUP_EXTENSION)).toBe(true);
});

test('the same files may be shared to it, as a form to an address that only its worker answers (W3C, Web Share Target)', () => {
  const { params, ...target } = manifest['share_target'] as {
    readonly params: { readonly files: readonly [{ name: string; accept: readonly string[] }] };
  };
  expect(target).toEqual({ action: './shared', method: 'POST', enctype: 'multipart/form-data' });
  const [{ name, accept }] = params.files;
  expect(name).toBe('file');
  expect(accept).toEqual(
    expect.arrayContaining(['audio/midi', '.mid', '.midi', BACKUP_MIME, BACKUP_EXTENSION]),
  );
});

const iconSizes = (purpose?: string) =>
  manifest.icons.filter((icon) => icon.purpose === purpose).map((icon) => icon.sizes);

test('there are icons of 192 and 512 pixels, and one that may be cut to a shape', () => {
  expect(iconSizes()).toEqual(expect.arrayContaining(['192x192', '512x512', 'any']));
  expect(iconSizes('maskable')).toEqual(['512x512']);
});

const pictures = [
  ...manifest.icons,
  ...manifest.shortcuts.flatMap(({ icons }) => icons),
  ...(manifest.screenshots ?? []),
];

test.each(pictures.filter(({ type }) => type === 'image/png'))('$src has $sizes', (picture) => {
  expect(pngSize(join(FOLDER, picture.src))).toBe(picture.sizes);
});

test.each(pictures.filter(({ type }) => type !== 'image/png'))('$src is a drawing', (picture) => {
  expect(picture).toMatchObject({ type: 'image/svg+xml', sizes: 'any' });
  expect(readFileSync(join(FOLDER, picture.src), 'utf8')).toMatch(/^<svg /);
});

test("shortcuts lead to today's list and the map", () => {
  expect(manifest.shortcuts.map(({ url }) => url)).toEqual(['./#/today', './#/map']);
});

describe.runIf(manifest.screenshots !== undefined)(
  'screenshots (web.dev, richer install UI)',
  () => {
    const shots = manifest.screenshots ?? [];

    test.each(['wide', 'narrow'] as const)('at least two are %s, all of one shape', (factor) => {
      const sizes = shots.filter((shot) => shot.form_factor === factor).map((shot) => shot.sizes);
      expect(sizes.length).toBeGreaterThanOrEqual(2);
      expect(new Set(sizes).size).toBe(1);
      const sides = sizes[0]!
        .split('x')
        .map(Number)
        .toSorted((a, b) => a - b);
      expect(sides[0]).toBeGreaterThanOrEqual(320);
      expect(sides[1]).toBeLessThanOrEqual(3840);
      expect(sides[1]! / sides[0]!).toBeLessThanOrEqual(2.3);
    });

    test('each says what it shows', () => {
      expect(shots.every(({ label }) => label !== undefined && label.length > 0)).toBe(true);
    });
  },
);
