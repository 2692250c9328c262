/**
 * A thread of its own for long work, so that the page stays alive: it is given orders, tells what it finds on the way, and
 * answers or fails. thread-work.ts is its other end.
 */
import { trustedScriptUrl } from '../trusted';
import { StoreError } from './errors';
import { errorOf, type Failure } from './failure';

/** What a thread says of an order. */
export type Report<Answer, Told> =
  | { readonly outcome: 'told'; readonly told: Told }
  | { readonly outcome: 'done'; readonly answer: Answer }
  | { readonly outcome: 'failed'; readonly failure: Failure };

export class Thread<Order, Answer, Told = never> {
  private readonly worker: Worker;
  private readonly life = new AbortController();

  constructor(address: string, name: string) {
    this.worker = new Worker(trustedScriptUrl(address), { type: 'module', name });
    this.worker.addEventListener('error', () => this.end());
  }

  /** Rejects with what went wrong there, or with a StoreError if the thread has ended or ends meanwhile. */
  ask(order: Order, tell?: (told: Told) => void): Promise<Answer> {
    const { signal } = this.life;
    // A channel for each order, so that answers to several at once are not mixed up.
    const { port1: port, port2: theirs } = new MessageChannel();
    return new Promise<Answer>((resolve, reject) => {
      const giveUp = () => reject(signal.reason as StoreError);
      if (signal.aborted) giveUp();
      signal.addEventListener('abort', giveUp);
      port.addEventListener('message', ({ data: report }: MessageEvent<Report<Answer, Told>>) => {
        if (report.outcome === 'told') tell?.(report.told);
        else if (report.outcome === 'done') resolve(report.answer);
        else reject(errorOf(report.failure));
      });
      port.start();
      this.worker.postMessage(order, [theirs]);
    }).finally(() => port.close());
  }

  end(detail?: string): void {
    this.worker.terminate();
    this.life.abort(new StoreError('failed', detail === undefined ? {} : { detail }));
  }
}
