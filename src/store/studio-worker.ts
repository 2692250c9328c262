/** The thread that reads how all students stand: many logs, so long work. */
import { type Overview, readStudio } from './studio';
import type { Order } from './studio-thread';
import { connectInThread, work } from './thread-work';

const over = new AbortController().signal;

work((order: Order, tell: (overview: Overview) => void) =>
  readStudio(connectInThread(order.database), { ...order, tell, over }),
);
