import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { preact } from '@preact/preset-vite';
import { defineConfig, type Plugin } from 'vite';
import { cacheControl, SECURITY_HEADERS } from './service-worker/headers.ts';

/** `vite preview` sends the headers that README asks of a host. */
const hostHeaders: Plugin = {
  name: 'host-headers',
  configurePreviewServer(server) {
    server.middlewares.use((request, response, next) => {
      const { pathname } = new URL(request.url ?? '/', 'http://localhost');
      // That a file is missing must not be remembered: it may be there after the next deploy.
      const isThere = existsSync(join('dist', pathname));
      response.setHeader('Cache-Control', isThere ? cacheControl(pathname) : 'no-store');
      for (const [name, value] of Object.entries(SECURITY_HEADERS)) response.setHeader(name, value);
      next();
    });
  },
};

/** Vite's own dev client adds style elements and opens a socket; only the development page may. */
const devPolicy: Plugin = {
  name: 'dev-policy',
  apply: 'serve',
  transformIndexHtml: {
    order: 'pre',
    handler: (html) =>
      html
        .replace("script-src 'self'", "script-src 'self' 'unsafe-inline'")
        .replace("style-src 'self'", "style-src 'self' 'unsafe-inline'")
        .replace("connect-src 'self'", "connect-src 'self' ws:")
        .replace("; require-trusted-types-for 'script'; trusted-types sw", ''),
  },
};

/** Bytes below which what some screens share is loaded by others too, rather than being a file of its own. */
const SMALL_PART = 8000;

export default defineConfig({
  root: 'src',
  // Relative addresses and one document (screens are behind the hash) let the app live under any path.
  base: './',
  publicDir: '../manifest',
  // With 'spa' a missing file would be answered with the page, and a worker would store that.
  appType: 'mpa',
  plugins: [preact({ reactAliasesEnabled: false }), hostHeaders, devPolicy],
  worker: { format: 'es' },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: true,
    // The policy allows neither data: addresses nor inline scripts.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // Each file has its sum in the worker, which must stay small: so few files, with names that say nothing but the hash.
    rolldownOptions: {
      // Tonal does not say of itself that its dictionaries of chords and scales, which are not used, may be left out, nor
      // VexFlow that its tablature, chord symbols and the rest may.
      treeshake: { moduleSideEffects: [{ test: /tonal|vexflow/, sideEffects: false }] },
      output: {
        chunkFileNames: 'assets/part-[hash].js',
        assetFileNames: 'assets/part-[hash][extname]',
        codeSplitting: {
          groups: [
            // All that the first screen needs is one file: each more costs a way through the worker at every start.
            { name: 'first', tags: ['$initial'], priority: 1 },
            { name: 'part', entriesAware: true, entriesAwareMergeThreshold: SMALL_PART },
          ],
        },
      },
    },
  },
  preview: { port: Number(process.env.PORT ?? 4173), strictPort: true },
});
