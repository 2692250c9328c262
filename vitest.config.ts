import { preact } from '@preact/preset-vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [preact({ prefreshEnabled: false, devToolsEnabled: false, reactAliasesEnabled: false })],
  test: {
    // Generous, as two cores may be busy: no test asserts a time.
    testTimeout: 30_000,
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
          setupFiles: ['tests/setup.ts'],
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
          sequence: { groupOrder: 1 },
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
