/** A page and its thread, in one place: the other end of a Worker hears what the page posts. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { BackupError } from '../../shared/formats/backup';
import { StoreError } from '../../src/store/errors';
import { Thread } from '../../src/store/thread';
import { work } from '../../src/store/thread-work';

/** Stands in for the browser's: a thread that does what was last said to be its work. */
class FakeWorker extends EventTarget {
  static hear: (event: MessageEvent) => void = () => undefined;
  static made: FakeWorker[] = [];
  isEnded = false;

  constructor(readonly address: string) {
    super();
    FakeWorker.made.push(this);
  }

  postMessage(data: unknown, ports: MessagePort[]): void {
    FakeWorker.hear({ data: structuredClone(data), ports } as unknown as MessageEvent);
  }

  terminate(): void {
    this.isEnded = true;
  }
}

beforeEach(() => {
  FakeWorker.made = [];
  vi.stubGlobal('Worker', FakeWorker);
  vi.stubGlobal('addEventListener', (_: string, hear: typeof FakeWorker.hear) => {
    FakeWorker.hear = hear;
  });
});
afterEach(() => vi.unstubAllGlobals());

type Order = 'count' | 'fail' | 'refuse' | 'wait';

function begin() {
  let answer: ((count: number) => void) | undefined;
  work(async (order: Order, tell: (step: number) => void) => {
    if (order === 'fail') throw new StoreError('full');
    if (order === 'refuse') throw new BackupError('Line 7 is damaged.', 7);
    if (order === 'wait') return new Promise<number>((resolve) => (answer = resolve));
    for (const step of [1, 2]) tell(step);
    return 3;
  });
  const thread = new Thread<Order, number, number>('/assets/work-12345678.js', 'work');
  return { thread, worker: FakeWorker.made[0]!, answer: (count: number) => answer!(count) };
}

test('an order is answered, with what is told on the way before it', async () => {
  const { thread } = begin();
  const told: number[] = [];
  expect(await thread.ask('count', (step) => told.push(step))).toBe(3);
  expect(told).toEqual([1, 2]);
});

test('each of several orders at once gets its own answer', async () => {
  const { thread, answer } = begin();
  const slow = thread.ask('wait');
  const told: number[] = [];
  expect(await thread.ask('count', (step) => told.push(step))).toBe(3);
  answer(7);
  expect(await slow).toBe(7);
  expect(told).toEqual([1, 2]);
});

test('what goes wrong there goes wrong here, as the same error', async () => {
  const { thread } = begin();
  await expect(thread.ask('fail')).rejects.toMatchObject({ name: 'StoreError', kind: 'full' });
  await expect(thread.ask('refuse')).rejects.toMatchObject({
    name: 'BackupError',
    message: 'Line 7 is damaged.',
    line: 7,
  });
  expect(await thread.ask('count')).toBe(3);
});

test('a thread that dies leaves nobody waiting, and answers nothing any more', async () => {
  const { thread, worker } = begin();
  const waiting = thread.ask('wait');
  worker.dispatchEvent(new Event('error'));
  await expect(waiting).rejects.toMatchObject({ name: 'StoreError', kind: 'failed' });
  expect(worker.isEnded).toBe(true);
  await expect(thread.ask('count')).rejects.toMatchObject({ kind: 'failed' });
});

test('a thread that is ended says why to who is waiting', async () => {
  const { thread, worker } = begin();
  const waiting = thread.ask('wait');
  thread.end('another file was opened');
  await expect(waiting).rejects.toThrow('another file was opened');
  expect(worker.isEnded).toBe(true);
});
