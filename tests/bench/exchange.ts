/** How long a teacher's device takes to take in the records of a studio, and for how long the page stands still meanwhile. */
import { launchBrowser } from '../browser/chromium';
import { buildHarness } from '../browser/harness';
import { startServer } from '../browser/server';
import { tasksDuring } from './tasks';

const STUDENTS = 30;
const RUNS = 20_000;
/** Milliseconds. */
const LIMIT = 100;
const MB = 1_000_000;

export async function benchExchange(students = STUDENTS): Promise<void> {
  const server = await startServer({ '/': await buildHarness('tests/bench/take-in.ts') });
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    await page.goto(`${server.origin}/`);
    const times: number[] = [];
    let longest = 0;
    for (let place = 0; place < students; place++) {
      await page.evaluate(([runs, one]) => window.prepare(runs!, one!), [RUNS, place]);
      const tasks = await tasksDuring(browser, page, async () => {
        times.push(await page.evaluate(() => window.takeIn()));
      });
      longest = Math.max(longest, ...tasks);
    }
    const client = await page.context().newCDPSession(page);
    await client.send('HeapProfiler.collectGarbage');
    const { usedSize } = await client.send('Runtime.getHeapUsage');
    const total = times.reduce((sum, time) => sum + time, 0);
    console.log(`${students} records of ${RUNS} runs: ${(total / 1000).toFixed(1)} s`);
    console.log(`  the first ${times[0]!.toFixed(0)} ms, the last ${times.at(-1)!.toFixed(0)} ms`);
    console.log(`  longest task of the page: ${longest.toFixed(0)} ms (at most ${LIMIT})`);
    console.log(`  memory of the page afterwards: ${(usedSize / MB).toFixed(1)} MB`);
  } finally {
    await browser.close();
    await server.kill();
  }
}
