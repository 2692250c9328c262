import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path/posix';
import { expect, test } from 'vitest';
import { findings, type Sources } from './layers';

function appSources(): Sources {
  const sources = new Map<string, string>();
  for (const top of ['shared', 'src', 'service-worker']) {
    for (const name of readdirSync(top, { recursive: true, encoding: 'utf8' })) {
      if (/\.tsx?$/.test(name)) sources.set(join(top, name), readFileSync(join(top, name), 'utf8'));
    }
  }
  return sources;
}

test('every import in the app goes the allowed way', () => {
  const sources = appSources();
  expect(sources.size).toBeGreaterThan(40);
  expect(findings(sources)).toEqual([]);
});

const of = (file: string, code: string) => findings(new Map([[file, code]]));

test.each([
  ['shared/music/a.ts', `import { Log } from '../log/events';`],
  ['shared/learning/a.ts', `import type { Plan } from '../planning/today';`],
  ['shared/planning/a.ts', `export { csv } from '../formats/csv';`],
  ['shared/planning/a.ts', `export * from '../formats/csv';`],
  ['shared/listening/a.ts', `import '../learning/learner';`],
  ['shared/log/a.ts', `import { now } from '../../src/clock';`],
  ['shared/log/a.ts', `import { signal } from '@preact/signals';`],
  ['shared/log/a.ts', `import { readFileSync } from 'node:fs';`],
  ['shared/music/a.ts', `import { Note } from 'tonal';`],
  ['src/parts/a.tsx', `import { transpose } from '@tonaljs/note';`],
  ['src/parts/a.tsx', `import { MapScreen } from '../screens/map/map-screen';`],
  ['src/parts/a.tsx', `import { openStore } from '../store/store';`],
  ['src/parts/a.tsx', `const day = import('../day/session');`],
  ['src/sound/a.ts', `import { openStore } from '../store/store';`],
  ['src/store/a.ts', `import { click } from '../sound/click';`],
  ['src/screens/map/a.tsx', `import { day } from '../today/day-list';`],
  ['src/screens/map/a.tsx', `const play = () => import('../play/play-screen');`],
  ['src/screens/map/a.tsx', `import { demo } from '../../demo/player';`],
  ['src/lazy.ts', `import { MapScreen } from './screens/map/map-screen';`],
  ['src/app.tsx', `import { MapScreen } from './screens/map/map-screen';`],
  ['src/main.tsx', `const map = import('./screens/map/map-screen');`],
  ['service-worker/a.ts', `import { deck } from '../shared/music/deck';`],
])('%s may not say: %s', (file, code) => {
  expect(of(file, code)).toHaveLength(1);
});

test.each([
  ['shared/music/theory.ts', `import { Note } from 'tonal';`],
  [
    'shared/formats/a.ts',
    `import * as v from 'valibot'; import { plan } from '../planning/today';`,
  ],
  [
    'src/screens/map/a.tsx',
    `import { Cell } from './cell'; import { Page } from '../../parts/page/page';`,
  ],
  ['src/sound/a.ts', `import url from './tick-worker?worker&url'; import { t } from '../trusted';`],
  ['src/lazy.ts', `const map = () => import('./screens/map/map-screen');`],
  ['src/app.tsx', `import { TodayScreen } from './screens/today/today-screen';`],
])('%s may say: %s', (file, code) => {
  expect(of(file, code)).toEqual([]);
});

const circle = (back: string) =>
  findings(
    new Map([
      ['src/route.ts', `import { b } from './parts/b';`],
      ['src/parts/b.ts', `import { c } from './c';`],
      ['src/parts/c.tsx', back],
    ]),
  );

test('files that need each other to load are found, types and lazy imports apart', () => {
  expect(circle(`import { go } from '../route';`)).toEqual([
    'in a circle: src/route.ts -> src/parts/b.ts -> src/parts/c.tsx -> src/route.ts',
  ]);
  expect(circle(`import type { Go } from '../route';`)).toEqual([]);
  expect(circle(`const route = import('../route');`)).toEqual([]);
});
