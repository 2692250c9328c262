/** A steady tick. It comes from a worker because the timers of a hidden page run once a second, and a worker's do not. */

const TICK_MS = 25;

// oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker's postMessage has no origin
setInterval(() => self.postMessage(null), TICK_MS);
