/** The thread that reads how all students stand: many logs, so long work. It is ended by the page. */
import { failureOf } from './failure';
import { connect } from './open';
import { type Overview, readStudio } from './studio';
import type { StudioAnswer, StudioWish } from './studio-orders';

const nothing = () => undefined;

function answer(given: StudioAnswer): void {
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker's postMessage has no origin
  postMessage(given);
}

const tell = (overview: Overview) => answer({ outcome: 'read', overview });

addEventListener('message', ({ data: wish }: MessageEvent<StudioWish>) => {
  const events = { outdated: nothing, blocked: nothing, deleted: nothing };
  const connection = connect(wish.database, events);
  readStudio(connection, { ...wish, tell, over: new AbortController().signal }).then(
    () => answer({ outcome: 'done' }),
    (error: unknown) => answer({ outcome: 'failed', failure: failureOf(error) }),
  );
});
