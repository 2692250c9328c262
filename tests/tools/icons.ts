/**
 * Draws the PNG icons from their SVG sources: `tsx tests/tools/icons.ts`. The results are committed, so nobody who builds
 * the app needs a browser for it.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { launchBrowser } from '../browser/chromium';

const FOLDER = 'manifest/icons';
const ICONS = [
  { source: 'icon.svg', size: 192, file: 'icon-192.png' },
  { source: 'icon.svg', size: 512, file: 'icon-512.png' },
  // These two are cut to a shape by the system, so they are drawn to the edges.
  { source: 'maskable.svg', size: 512, file: 'maskable-512.png' },
  { source: 'maskable.svg', size: 180, file: 'apple-touch-180.png' },
];

const browser = await launchBrowser();
for (const { source, size, file } of ICONS) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const drawing = readFileSync(`${FOLDER}/${source}`, 'utf8');
  await page.setContent(`<style>body{margin:0}svg{display:block;width:100vw}</style>${drawing}`);
  writeFileSync(`${FOLDER}/${file}`, await page.screenshot({ omitBackground: true }));
}
await browser.close();
