import { preact } from '@preact/preset-vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [preact({ prefreshEnabled: false, devToolsEnabled: false, reactAliasesEnabled: false })],
  test: {
    setupFiles: ['tests/setup.ts'],
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
        },
      },
      {
        extends: true,
        test: { name: 'dom', environment: 'happy-dom', include: ['tests/**/*.test.tsx'] },
      },
    ],
  },
});
