/** What is due on a clock: arithmetic on seconds. Metronome and playback, with sound, silent or offline, go through here. */

/**
 * How far ahead sounds are handed to the audio clock, in seconds. What is handed over can still be silenced, so looking
 * far ahead costs nothing, and a busy page that ticks late loses nothing. A hidden page may tick once a second.
 */
export const LOOK_AHEAD = { visible: 0.25, hidden: 2 } as const;

/** Something with its time, in seconds of the clock. */
export interface Timed {
  readonly time: number;
}

export interface Due<Thing> {
  /** To be sounded. */
  readonly ahead: readonly Thing[];
  /** Their time has passed: too late to sound, but not to be counted. */
  readonly late: readonly Thing[];
  /** Index of the first that is not due yet. */
  readonly next: number;
}

/** Things by index, in time order; null after the last. */
export type Row<Thing> = (index: number) => Thing | null;

/** The things from index `next` on that come before `now + lookAhead` (seconds). */
export function due<Thing extends Timed>(
  row: Row<Thing>,
  next: number,
  { now, lookAhead }: { readonly now: number; readonly lookAhead: number },
): Due<Thing> {
  const ahead: Thing[] = [];
  const late: Thing[] = [];
  let index = next;
  for (let thing = row(index); thing !== null && thing.time < now + lookAhead; thing = row(index)) {
    (thing.time < now ? late : ahead).push(thing);
    index += 1;
  }
  return { ahead, late, next: index };
}

/** Looks ahead and returns what is newly due. */
export type Walk<Thing> = (lookAhead: number) => readonly Thing[];

/**
 * Walks along a row from index `first`: each call sounds what is due within `lookAhead` seconds and returns all that is
 * newly due, the late too. Each thing is handed out once, however irregular the calls.
 */
export function walkRow<Thing extends Timed>(
  row: Row<Thing>,
  first: number,
  on: { now(): number; sound(thing: Thing): void },
): Walk<Thing> {
  let next = first;
  return (lookAhead) => {
    const found = due(row, next, { now: on.now(), lookAhead });
    next = found.next;
    for (const thing of found.ahead) on.sound(thing);
    return [...found.late, ...found.ahead];
  };
}
