/** The second process: works off the jobs that it is sent, one message back for each. */
import { type Job, work } from './jobs';

process.once('message', (jobs: readonly Job[]) => {
  for (const job of jobs) process.send!(work(job));
});
