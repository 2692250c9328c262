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

/**
 * The app is read by the first script and not by the page, which draws the last list before. What the page names all the
 * same: the app's style sheet, which that list needs, and its script, so that it is fetched meanwhile.
 */
const firstLoad: Plugin = {
  name: 'first-load',
  apply: 'build',
  transformIndexHtml: (_html, { bundle }) =>
    Object.values(bundle ?? {}).flatMap((part) => {
      if (part.type !== 'chunk' || !part.facadeModuleId?.endsWith('/main.tsx')) return [];
      const styles = [...(part.viteMetadata?.importedCss ?? [])];
      return [
        ...styles.map((file) => ({ rel: 'stylesheet', href: `./${file}` })),
        { rel: 'modulepreload', href: `./${part.fileName}` },
      ].map((attrs) => ({ tag: 'link', attrs, injectTo: 'head' as const }));
    }),
};

/** The library of the PDF brings a colour profile for printers, which a report does not name. */
const noColourProfile: Plugin = {
  name: 'no-colour-profile',
  generateBundle: (_options, bundle) => {
    for (const file of Object.keys(bundle)) if (file.endsWith('.icc')) delete bundle[file];
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
  plugins: [
    preact({ reactAliasesEnabled: false }),
    hostHeaders,
    devPolicy,
    firstLoad,
    noColourProfile,
  ],
  worker: { format: 'es' },
  // The library of the PDF can read packed fonts, for which it brings a dictionary of 70 kB; ours is not packed.
  resolve: {
    alias: {
      'brotli/decompress.js': new URL('src/parts/report-pdf/no-brotli.ts', import.meta.url)
        .pathname,
    },
  },
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
      // The app is an entry of its own, so that its parts are known as those of the first load.
      input: { index: 'src/index.html', main: 'src/main.tsx' },
      // Tonal does not say of itself that its dictionaries of chords and scales, which are not used, may be left out, nor
      // VexFlow that its tablature, chord symbols and the rest may.
      treeshake: { moduleSideEffects: [{ test: /tonal|vexflow/, sideEffects: false }] },
      output: {
        entryFileNames: 'assets/part-[hash].js',
        chunkFileNames: 'assets/part-[hash].js',
        assetFileNames: 'assets/part-[hash][extname]',
        codeSplitting: {
          groups: [
            // What comes before the app stays out of it. All else that the first screen needs is one file: each more costs
            // a way through the worker at every start.
            {
              name: 'boot',
              test: /src\/(index\.html|boot|trusted|styles|snapshot\/(show|snapshot))|preload-helper/,
              priority: 2,
            },
            { name: 'first', tags: ['$initial'], priority: 1 },
            { name: 'part', entriesAware: true, entriesAwareMergeThreshold: SMALL_PART },
          ],
        },
      },
    },
  },
  preview: { port: Number(process.env.PORT ?? 4173), strictPort: true },
});
