/** A process of the lab: works off the jobs that it is sent, one message back for each, until it is let go. */
import { type Job, work } from './jobs';

process.on('message', (job: Job) => process.send!(work(job)));
