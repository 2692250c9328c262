/**
 * The lab's command: `npm run simulate` lets invented students live with each way of planning, and writes what came of
 * it to RESULTS.md. `npm run simulate -- --quick` does it for few students and prints instead of writing.
 */
import { fork } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { format, resolveConfig } from 'prettier';
import { type Job, type JobResult, jobsOf, work } from './jobs';
import { resultsText } from './results';

/** Tuning has used seeds below 100 only. */
const REPORTED_SEED = 2026;
const FULL = { seed: REPORTED_SEED, students: 40, oracleStudents: 10, otherStudents: 12 };
const QUICK = { seed: 1, students: 4, oracleStudents: 1, otherStudents: 2 };
const RESULTS = new URL('RESULTS.md', import.meta.url);

/** The other half of the work, in a process of its own; this one does the first half. */
function inWorker(jobs: readonly Job[]): Promise<readonly JobResult[]> {
  const results: JobResult[] = [];
  const worker = fork(new URL('worker.ts', import.meta.url));
  worker.send(jobs);
  return new Promise((resolve, reject) => {
    worker.on('message', (result) => {
      results.push(result as JobResult);
      if (results.length === jobs.length) worker.disconnect();
    });
    worker.on('error', reject);
    worker.on('exit', (code) =>
      code === 0 ? resolve(results) : reject(new Error(`the second process ended with ${code}`)),
    );
  });
}

const start = performance.now();
const isQuick = process.argv.includes('--quick');
const extent = isQuick ? QUICK : FULL;
const jobs = jobsOf(extent);
const others = inWorker(jobs.filter((_, i) => i % 2 === 1));
const own = jobs.filter((_, i) => i % 2 === 0).map(work);
const results = [...own, ...(await others)];
const minutes = (performance.now() - start) / 60_000;
console.log(`lived ${results.reduce((sum, { outcomes }) => sum + outcomes.length, 0)} lives`);
const text = await format(resultsText(results, extent), {
  ...(await resolveConfig(RESULTS)),
  parser: 'markdown',
});
if (isQuick) console.log(text);
else writeFileSync(RESULTS, text);
console.log(`${minutes.toFixed(1)} minutes`);
