/** What a thread does with each order that thread.ts gives it, and the database as it sees it. */
import { failureOf } from './failure';
import { connect, type Connection } from './open';
import type { Report } from './thread';

export function work<Order, Answer, Told = never>(
  follow: (order: Order, tell: (told: Told) => void) => Promise<Answer>,
): void {
  addEventListener('message', ({ data: order, ports: [port] }: MessageEvent<Order>) => {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a port's postMessage has no origin
    const report = (said: Report<Answer, Told>) => port!.postMessage(said);
    follow(order, (told) => report({ outcome: 'told', told })).then(
      (answer) => report({ outcome: 'done', answer }),
      (error: unknown) => report({ outcome: 'failed', failure: failureOf(error) }),
    );
  });
}

const nothing = () => undefined;

/** The page has a connection of its own, which tells of other windows. */
export const connectInThread = (database: string): Connection =>
  connect(database, { outdated: nothing, blocked: nothing, deleted: nothing });
