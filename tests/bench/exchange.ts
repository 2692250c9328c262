/** How long a teacher's device takes to take in the records of a studio, and for how long the page stands still meanwhile. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { launchProfile } from '../browser/chromium';
import { buildHarness } from '../browser/harness';
import { startServer } from '../browser/server';
import { tasksDuring, watchWorkers } from './tasks';

const STUDENTS = 30;
const RUNS = 20_000;
/** Milliseconds. */
const LIMIT = 100;
const MB = 1_000_000;
/** Records after which it is told how it goes: all of them take minutes. */
const EACH = 5;

const inMB = (bytes: number): string => `${(bytes / MB).toFixed(1)} MB`;

function tell(times: readonly number[], longest: number, mostOfWorker: number): void {
  const total = times.reduce((sum, time) => sum + time, 0);
  console.log(`${times.length} records of ${RUNS} runs: ${(total / 1000).toFixed(1)} s`);
  console.log(`  the first ${times[0]!.toFixed(0)} ms, the last ${times.at(-1)!.toFixed(0)} ms`);
  console.log(`  longest task of the page: ${longest.toFixed(0)} ms (at most ${LIMIT})`);
  console.log(`  memory of the thread that takes them in, at most: ${inMB(mostOfWorker)}`);
}

export async function benchExchange(students = STUDENTS): Promise<void> {
  const server = await startServer({ '/': await buildHarness('tests/bench/take-in.ts') });
  // A browser without a profile would keep the records in memory.
  const profile = mkdtempSync(join(tmpdir(), 'arpeggiary-bench-'));
  const context = await launchProfile(profile);
  try {
    const page = await context.newPage();
    await page.goto(`${server.origin}/`);
    const times: number[] = [];
    let [longest, mostOfWorker] = [0, 0];
    for (let place = 0; place < students; place++) {
      await page.evaluate(([runs, one]) => window.prepare(runs!, one!), [RUNS, place]);
      const workers = await watchWorkers(page);
      const tasks = await tasksDuring(page, async () => {
        times.push(await page.evaluate(() => window.takeIn()));
      });
      mostOfWorker = Math.max(mostOfWorker, await workers.stop());
      longest = Math.max(longest, ...tasks);
      if ((place + 1) % EACH === 0) tell(times, longest, mostOfWorker);
    }
    const client = await context.newCDPSession(page);
    await client.send('HeapProfiler.collectGarbage');
    const { usedSize } = await client.send('Runtime.getHeapUsage');
    console.log(`  memory of the page afterwards: ${inMB(usedSize)}`);
  } finally {
    await context.close();
    await server.kill();
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}
