/** How long the tasks of a page take, by the processor's time, so that what else the machine does is not counted. */
import type { Browser, Page } from 'playwright-core';

interface TraceEvent {
  readonly name: string;
  readonly tid: number;
  readonly pid: number;
  /** Microseconds of the processor. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Milliseconds of the processor for each task of the page's main thread while some work is done. */
export async function tasksDuring(
  browser: Browser,
  page: Page,
  work: () => Promise<void>,
): Promise<readonly number[]> {
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline', '__metadata'] });
  await work();
  const trace = JSON.parse((await browser.stopTracing()).toString()) as {
    readonly traceEvents: readonly TraceEvent[];
  };
  const isMain = (event: TraceEvent) =>
    event.name === 'thread_name' && event.args?.name === 'CrRendererMain';
  const threads = new Set(trace.traceEvents.filter(isMain).map(({ pid, tid }) => `${pid}.${tid}`));
  return trace.traceEvents
    .filter(({ name, pid, tid }) => name.endsWith('RunTask') && threads.has(`${pid}.${tid}`))
    .map(({ tdur = 0 }) => tdur / 1000);
}
