/**
 * Pages of our own for the tests that need parts of the app in a real browser without its screens: a module such as
 * tests/store/harness.ts becomes a page that runs it. What it wants to hand out, it puts on `window`.
 */
import { cpSync, readdirSync, writeFileSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { preact } from '@preact/preset-vite';
import { build } from 'vite';
import { POLICY } from '../../service-worker/headers';

const pageWith = (styleSheets: readonly string[]): string => `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8">
    <meta http-equiv="Content-Security-Policy" content="${POLICY}">
    <title>Harness</title>
    <link rel="icon" href="./icon.svg">
    ${styleSheets.map((name) => `<link rel="stylesheet" href="./assets/${name}">`).join('\n    ')}
    <script type="module" src="./harness.js"></script>
  </head>
  <body><div id="app"></div></body>
</html>
`;

/**
 * Builds `entry` ("tests/store/harness.ts") into a folder with an index.html that runs it under the app's own content
 * security policy, and returns the folder, to be mounted on a server. Workers and lazy parts work as in the app.
 */
export async function buildHarness(entry: string): Promise<string> {
  const folder = resolve('.build/harness', entry.replaceAll(/\W+/g, '-'));
  await build({
    configFile: false,
    root: resolve('.'),
    base: './',
    publicDir: false,
    logLevel: 'error',
    plugins: [preact({ prefreshEnabled: false, devToolsEnabled: false })],
    worker: { format: 'es' },
    build: {
      outDir: folder,
      emptyOutDir: true,
      target: 'es2022',
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      reportCompressedSize: false,
      rolldownOptions: { input: resolve(entry), output: { entryFileNames: 'harness.js' } },
    },
  });
  const made = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  const styleSheets = made.filter((name) => name.endsWith('.css')).map((name) => basename(name));
  writeFileSync(`${folder}/index.html`, pageWith(styleSheets));
  // A browser that is given none asks the host for one, and what is not there would be an error on the console.
  cpSync('manifest/icons/icon.svg', `${folder}/icon.svg`);
  return folder;
}
