import { preact } from '@preact/preset-vite';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files in tests/browser that take longest, longest first: begun late, one of them would be waited for alone. */
const LONGEST = [
  'access',
  'microphone',
  'store',
  'microphone-check',
  'listening',
  'playback',
  'pwa',
  'students',
  'studio-story',
];

function rankOf({ moduleId }: TestSpecification): number {
  const place = LONGEST.findIndex((name) => moduleId.endsWith(`/browser/${name}.test.ts`));
  return place === -1 ? LONGEST.length : place;
}

class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    // oxlint-disable-next-line unicorn/no-array-sort -- it is not that of an array
    const sorted = await super.sort(files);
    return sorted.toSorted((a, b) => rankOf(a) - rankOf(b));
  }
}

export default defineConfig({
  plugins: [preact({ prefreshEnabled: false, devToolsEnabled: false, reactAliasesEnabled: false })],
  test: {
    // Generous, as the cores are busy: no test asserts a time.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 60_000 } },
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          // Nothing here leaves anything behind, and a process for each file took as long as its tests.
          isolate: false,
          setupFiles: ['tests/setup.ts'],
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
        },
      },
      {
        extends: true,
        test: {
          name: 'dom',
          environment: 'happy-dom',
          setupFiles: ['tests/setup.ts', 'tests/setup-dom.ts'],
          include: ['tests/**/*.test.tsx'],
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          environment: 'node',
          globalSetup: ['tests/browser/build-site.ts'],
          include: ['tests/browser/**/*.test.ts'],
          // Each file drives a browser of its own, and two cores carry two of them at most.
          maxWorkers: 2,
          // Sound is played and heard in real time, for which a machine may be too busy once; the summary names the test.
          retry: 1,
          sequence: { groupOrder: 1 },
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});
