/**
 * The engraved staff: how large what is loaded for it is, and how long a page takes until it shows the music of four
 * octaves in both hands, against the same page with the smallest example of the library that draws the notes.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { launchBrowser } from '../browser/chromium';
import { buildHarness } from '../browser/harness';
import { startServer } from '../browser/server';
import { READY, timesOf, timeToReady, watchForReady } from './page';

const TIMES = 15;
const LIMIT = 1.5;
/** A class name of the library, which tells its part from others. */
const SIGN_OF_LIBRARY = 'stavenote';

function printSizes(folder: string): void {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  const drawing = files
    .filter((name) => name.endsWith('.js'))
    .map((name) => readFileSync(join(folder, name)))
    .filter((code) => code.includes(SIGN_OF_LIBRARY));
  const size = drawing.reduce((sum, code) => sum + gzipSync(code, { level: 9 }).length, 0);
  const font = files.find((name) => /music.*\.woff2$/.test(name))!;
  const fontSize = readFileSync(join(folder, font)).length;
  console.log(
    `loaded for the staff: ${(size / 1000).toFixed(1)} kB of script, gzip, and a font of ${(fontSize / 1000).toFixed(1)} kB`,
  );
}

export async function benchStaff(): Promise<void> {
  const folder = await buildHarness('tests/bench/staff-page.tsx');
  printSizes(folder);
  const server = await startServer({ '/': folder });
  const browser = await launchBrowser();
  const context = await browser.newContext();
  try {
    await context.addInitScript(watchForReady, READY);
    const url = `${server.origin}/`;
    const times = { ours: [] as number[], smallest: [] as number[] };
    // In turn, so that whatever else the machine does meets both.
    for (let i = 0; i < TIMES; i++) {
      times.smallest.push((await timeToReady(context, `${url}#smallest`, 1)).shown);
      times.ours.push((await timeToReady(context, url, 1)).shown);
    }
    const [ours, smallest] = [timesOf(times.ours), timesOf(times.smallest)];
    for (const kind of ['fastest', 'median'] as const) {
      const [one, other] = [ours[kind], smallest[kind]];
      console.log(
        `until the music is seen, ${kind} of ${TIMES}: ${one.toFixed(0)} ms, smallest example: ${other.toFixed(0)} ms`,
      );
      console.log(`  ratio ${(one / other).toFixed(2)} (at most ${LIMIT})`);
    }
  } finally {
    await browser.close();
    await server.kill();
  }
}
