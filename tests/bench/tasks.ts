/** What some work in a page costs: how long its tasks take, and what its threads hold. */
import type { CDPSession, Page } from 'playwright-core';

interface TraceEvent {
  readonly name: string;
  readonly tid: number;
  readonly pid: number;
  /** Microseconds of the processor. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

const CATEGORIES = ['toplevel', 'devtools.timeline', '__metadata'];

/**
 * Milliseconds for each task of the page's main thread while some work is done, by the processor's time, so that what
 * else the machine does is not counted.
 */
export async function tasksDuring(
  page: Page,
  work: () => Promise<void>,
): Promise<readonly number[]> {
  const client = await page.context().newCDPSession(page);
  const events: TraceEvent[] = [];
  client.on('Tracing.dataCollected', ({ value }) => {
    for (const event of value as unknown as readonly TraceEvent[]) events.push(event);
  });
  await client.send('Tracing.start', { traceConfig: { includedCategories: CATEGORIES } });
  await work();
  const complete = new Promise((resolve) => {
    client.once('Tracing.tracingComplete', resolve);
  });
  await client.send('Tracing.end');
  await complete;
  await client.detach();
  const isMain = (event: TraceEvent) =>
    event.name === 'thread_name' && event.args?.name === 'CrRendererMain';
  const threads = new Set(events.filter(isMain).map(({ pid, tid }) => `${pid}.${tid}`));
  return events
    .filter(({ name, pid, tid }) => name.endsWith('RunTask') && threads.has(`${pid}.${tid}`))
    .map(({ tdur = 0 }) => tdur / 1000);
}

/** Milliseconds between two looks at what the workers hold. */
const PERIOD = 250;

/** Asks each worker of the page now and then for the bytes that it holds; `stop` tells the most of any. */
export async function watchWorkers(page: Page): Promise<{ stop(): Promise<number> }> {
  const client = await page.context().newCDPSession(page);
  const workers = new Set<string>();
  let most = 0;
  client.on('Target.attachedToTarget', ({ sessionId }) => workers.add(sessionId));
  client.on('Target.detachedFromTarget', ({ sessionId }) => workers.delete(sessionId));
  client.on('Target.receivedMessageFromTarget', ({ message }) => {
    const { result } = JSON.parse(message) as { readonly result?: { readonly usedSize?: number } };
    most = Math.max(most, result?.usedSize ?? 0);
  });
  const attach = (autoAttach: boolean) =>
    client.send('Target.setAutoAttach', {
      autoAttach,
      waitForDebuggerOnStart: false,
      flatten: false,
    });
  await attach(true);
  const timer = setInterval(() => void ask(client, workers), PERIOD);
  return {
    stop: async () => {
      clearInterval(timer);
      await client.detach();
      return most;
    },
  };
}

async function ask(client: CDPSession, workers: ReadonlySet<string>): Promise<void> {
  const message = JSON.stringify({ id: 1, method: 'Runtime.getHeapUsage' });
  for (const sessionId of workers) {
    // A worker that has ended meanwhile holds nothing.
    await client.send('Target.sendMessageToTarget', { sessionId, message }).catch(() => undefined);
  }
}
