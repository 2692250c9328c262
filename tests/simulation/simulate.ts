/**
 * The lab's command: `npm run simulate` lets invented students live with each way of planning, and writes what came of
 * it to RESULTS.md. `npm run simulate -- --quick` does it for few students and prints instead of writing.
 */
import { fork } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { format, resolveConfig } from 'prettier';
import { type Job, type JobResult, jobsOf } from './jobs';
import { resultsText } from './results';

/** Tuning has used seeds below 100 only. */
const REPORTED_SEED = 2026;
const FULL = { seed: REPORTED_SEED, students: 40, oracleStudents: 8, otherStudents: 12 };
const QUICK = { seed: 1, students: 4, oracleStudents: 1, otherStudents: 2 };
const RESULTS = new URL('RESULTS.md', import.meta.url);

const PROCESSES = 2;

/** Lets one process work off jobs from the list until there are none. */
function inProcess(jobs: Job[], results: JobResult[]): Promise<void> {
  const worker = fork(new URL('worker.ts', import.meta.url));
  const next = (): void => {
    const job = jobs.shift();
    if (job === undefined) worker.disconnect();
    else worker.send(job);
  };
  next();
  return new Promise((resolve, reject) => {
    worker.on('message', (result) => {
      results.push(result as JobResult);
      next();
    });
    worker.on('error', reject);
    worker.on('exit', (code) =>
      code === 0 ? resolve() : reject(new Error(`a process of the lab ended with ${code}`)),
    );
  });
}

const isLong = ({ planner }: Job): boolean => planner === 'oracle';

/** All jobs, the long ones first, so that neither process waits for the other at the end. */
async function workAll(jobs: readonly Job[]): Promise<readonly JobResult[]> {
  const open = [...jobs.filter(isLong), ...jobs.filter((job) => !isLong(job))];
  const results: JobResult[] = [];
  await Promise.all(Array.from({ length: PROCESSES }, () => inProcess(open, results)));
  return results;
}

const start = performance.now();
const isQuick = process.argv.includes('--quick');
const extent = isQuick ? QUICK : FULL;
const results = await workAll(jobsOf(extent));
const minutes = (performance.now() - start) / 60_000;
console.log(`lived ${results.reduce((sum, { outcomes }) => sum + outcomes.length, 0)} lives`);
const text = await format(resultsText(results, extent), {
  ...(await resolveConfig(RESULTS)),
  parser: 'markdown',
});
if (isQuick) console.log(text);
else writeFileSync(RESULTS, text);
console.log(`${minutes.toFixed(1)} minutes`);
