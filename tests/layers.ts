/**
 * The direction of imports, as DEVELOPERS.md draws it. Every folder says what it may use; a file that uses anything else,
 * or that comes back to itself through its imports, is a finding.
 */
import { dirname, join } from 'node:path/posix';
import { parseSync } from 'vite';

interface Import {
  /** "tonal", or the path from the root without ending or query: "shared/music/deck". */
  readonly target: string;
  readonly isPackage: boolean;
  readonly kind: 'static' | 'lazy' | 'type';
}

/** Paths from the root ("shared/music/deck.ts") with the text of each. */
export type Sources = ReadonlyMap<string, string>;

const SHARED = ['shared/music', 'shared/log', 'shared/learning', 'shared/planning'];
const ALL_SHARED = [...SHARED, 'shared/listening', 'shared/formats'];
const TOOLS = ['src/parts', 'src/store', 'src/day', 'src/sound', 'src/update'];
/** Its version is told on the screen. */
const PACKAGE = 'package.json';

/**
 * What the files of an area may use besides their own area. "src" are the files right in that folder: the small services
 * of the page (clock, route, preferences) and the shell that puts all together.
 */
const MAY_USE: Readonly<Record<string, readonly string[]>> = {
  'shared/music': [],
  'shared/log': ['shared/music'],
  'shared/learning': ['shared/music', 'shared/log'],
  'shared/planning': ['shared/music', 'shared/log', 'shared/learning'],
  'shared/listening': ['shared/music', 'shared/log'],
  'shared/formats': ALL_SHARED,
  'src/parts': [...ALL_SHARED, 'src', 'src/sound'],
  'src/store': [...ALL_SHARED, 'src'],
  'src/day': [...ALL_SHARED, 'src', 'src/store'],
  'src/sound': [...ALL_SHARED, 'src'],
  'src/update': ['src'],
  'src/snapshot': [],
  'src/demo': [...ALL_SHARED, 'src', 'src/store'],
  'src/screens': [...ALL_SHARED, 'src', ...TOOLS],
  src: [...ALL_SHARED, ...TOOLS, 'src/snapshot', 'src/styles'],
  'service-worker': [],
};

/** Packages that need no browser; the rest of shared/ must run anywhere. */
const SHARED_PACKAGES = new Set(['valibot', 'date-fns', 'papaparse']);
const TONAL_DOORWAY = 'shared/music/theory.ts';
const SPECTRUM_DOORWAY = 'shared/listening/sound/spectrum.ts';
/** Only these know the screens: the one loads them when needed, the other shows today's list at once. */
const LOADER = 'src/lazy.ts';
const SHELL = 'src/app.tsx';
const FIRST_SCREEN = 'src/screens/today';

/** All findings in `sources`, each naming the file and what it must not use. */
export function findings(sources: Sources): string[] {
  const imports = new Map([...sources].map(([file, code]) => [file, importsOf(file, code)]));
  const uses = [...imports].flatMap(([file, list]) =>
    list.filter((use) => !isAllowed(file, use)).map((use) => `${file} must not use ${use.target}`),
  );
  return [...new Set(uses), ...cycles(imports)];
}

function isAllowed(file: string, use: Import): boolean {
  if (use.isPackage) return isPackageAllowed(file, use.target);
  if (use.target === PACKAGE) return file.startsWith('src/');
  const area = areaOf(file);
  const target = areaOf(use.target);
  if (target === area) return true;
  if (target.startsWith('src/screens/')) {
    if (file === LOADER) return use.kind !== 'static';
    return file === SHELL && target === FIRST_SCREEN;
  }
  if (target === 'src/demo') return file === LOADER && use.kind === 'lazy';
  const allowed = MAY_USE[area.startsWith('src/screens/') ? 'src/screens' : area];
  return allowed?.includes(target) ?? false;
}

function isPackageAllowed(file: string, name: string): boolean {
  if (/^(?:@tonaljs\/|tonal$)/.test(name)) return file === TONAL_DOORWAY;
  if (name === 'fft.js') return file === SPECTRUM_DOORWAY;
  return !file.startsWith('shared/') || SHARED_PACKAGES.has(name);
}

/** "shared/music", "src/parts", "src/screens/map", "service-worker"; "src" for the files right in it. */
function areaOf(path: string): string {
  const folders = path.split('/').slice(0, -1);
  return folders.slice(0, folders[1] === 'screens' ? 3 : 2).join('/');
}

function importsOf(file: string, code: string): Import[] {
  const { module } = parseSync(file, code);
  const found = (from: string, kind: Import['kind']): Import => {
    const isPackage = !from.startsWith('.');
    const path = from.replace(/\?.*$/, '');
    return { target: isPackage ? path : join(dirname(file), path), isPackage, kind };
  };
  return [
    ...module.staticImports.map((one) => found(one.moduleRequest.value, kindOf(one.entries))),
    ...module.staticExports.flatMap(({ entries }) =>
      entries.flatMap((entry) =>
        entry.moduleRequest === null ? [] : [found(entry.moduleRequest.value, kindOf([entry]))],
      ),
    ),
    ...module.dynamicImports.map(({ moduleRequest: { start, end } }) =>
      // With the quotes: an address that is computed stays as it is, and is then no known package.
      found(code.slice(start, end).replaceAll(/^['"]|['"]$/g, ''), 'lazy'),
    ),
  ];
}

const kindOf = (entries: readonly { readonly isType: boolean }[]): Import['kind'] =>
  entries.length > 0 && entries.every((entry) => entry.isType) ? 'type' : 'static';

/** Circles of imports that are followed when the program loads: "a.ts -> b.ts -> a.ts". */
function cycles(imports: ReadonlyMap<string, readonly Import[]>): string[] {
  const found: string[] = [];
  const done = new Set<string>();
  const visit = (file: string, way: readonly string[]): void => {
    const start = way.indexOf(file);
    if (start !== -1) found.push(`in a circle: ${[...way.slice(start), file].join(' -> ')}`);
    if (start !== -1 || done.has(file)) return;
    for (const use of imports.get(file) ?? []) {
      const next = use.kind === 'static' ? fileOf(use.target, imports) : undefined;
      if (next !== undefined) visit(next, [...way, file]);
    }
    done.add(file);
  };
  for (const file of imports.keys()) visit(file, []);
  return found;
}

const fileOf = (target: string, files: ReadonlyMap<string, unknown>): string | undefined =>
  [target, `${target}.ts`, `${target}.tsx`].find((path) => files.has(path));
