/** What it costs to go from step to step in some time, for what puts a heard course in its places. */

/** An interval from step to step may be these shares of the usual one, the longest these seconds more. */
export const SHORTEST = 0.5;
const LONGEST = 1.6;
const HESITATION = 0.25;
/** Cost of an interval that is off by the whole of the usual one, never more than MOST_OFF; and of a stop. */
const OFF = 1;
const MOST_OFF = 0.3;
export const STOP = 0.6;

/** Moments in the shortest interval. `interval` in moments of the sound. */
export const shortestOf = (interval: number): number =>
  Math.max(1, Math.round(SHORTEST * interval));

/** What an interval of so many moments costs, up to the longest. `interval` in moments, which are `hop` seconds each. */
export const costsOf = (interval: number, hop: number): Float32Array =>
  Float32Array.from(
    { length: Math.round(LONGEST * interval + HESITATION / hop) + 1 },
    (_, moments) => Math.min(MOST_OFF, OFF * (moments / interval - 1) ** 2),
  );
