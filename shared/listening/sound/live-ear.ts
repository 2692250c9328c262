/**
 * Hears a run while it goes on: where the player is, and which notes have sounded. It waits a little for what comes after
 * a note, and judges nothing: what was wrong is told by `hear`, of the whole.
 */
import type { Expected } from '../expected';
import type { Lit } from '../follower';
import { type Evidence, evidenceIn, type EvidenceOptions, type Range } from './evidence';
import { LiveFollow } from './live-follow';
import { liveLights } from './live-lights';
import { type LiveRises, liveRisesOf } from './live-rises';
import { liveTuning } from './live-tuning';
import { heldIn, type Recent, recentOf } from './recent';
import { keysOf } from './rises';
import { QUIET_ENOUGH, roomOf } from './room';

/** Seconds of sound that are held at least. */
const HELD = 8;
/** Semitones below the lowest and above the highest note at which wrong ones are looked for. */
const BEYOND = 3;
/** Seconds after which a note is judged, at least: when it is seen where the next one begins. */
const AFTER = 0.25;
/** Seconds after a note in which it is looked at, at most; and that as a share of the time to the next. */
const LOOKED_AT = 0.19;
const SHARE = 0.85;
/** Share by which the time from note to note may change while the same spectra serve. */
const SAME_INTERVAL = 0.1;
/** Steps after which it is known how well the room lets the piano be heard, from so many seconds before the first. */
const ROOM_KNOWN = 8;
const QUIET_BEFORE = 0.6;
const LEAST_BEFORE = 0.25;

/** What makes lights worth nothing: noise, or a piano that is too loud for the microphone. */
export type Spoilt = 'noise' | 'loud';

export interface LiveHeard {
  /** The step that was begun last, or to which the player was turned; -1 before the first. */
  readonly step: number;
  /** Nothing where it is spoilt. */
  readonly lit: Lit;
  readonly spoilt: Spoilt | null;
}

export interface LiveOptions {
  /** Samples a second. */
  readonly rate: number;
  /** Notes a minute that were set. */
  readonly tempo: number;
  /** Cents of the piano from A4 = 440 Hz as it was checked; null if it was not: then the first notes tell. */
  readonly tuning: number | null;
}

export interface LiveEar {
  /** More of the sound, from a little before the first note on. */
  add(samples: Float32Array): void;
  /** The player was turned to the arpeggio that begins at a step, and goes on from there. */
  turnTo(start: number): void;
  heard(): LiveHeard;
}

export function liveEar(expected: Expected, { rate, tempo, tuning }: LiveOptions): LiveEar {
  const { steps } = expected;
  const recent = recentOf(rate, HELD);
  const keys = keysOf(steps);
  const keysOfStep = steps.map((step) => step.map(({ key }) => keys.indexOf(key.midi)));
  const tune = liveTuning(recent, tuning);
  let open: Hearing | null = null;
  let turnedTo = -1;
  let spoilt: Spoilt | null | undefined;

  const evidence = evidenceOn(recent, {
    lowest: Math.min(...keys) - BEYOND,
    highest: Math.max(...keys) + BEYOND,
  });
  const lights = liveLights(steps, ({ moment }) => {
    const { cents, interval, timeOf } = open!;
    return evidence(timeOf(moment), interval(), cents);
  });
  const begin = (cents: number): Hearing => {
    const rises = liveRisesOf(recent, keys, cents);
    const { hop, start } = rises;
    const follow = new LiveFollow(expected, { interval: 60 / tempo / hop, hop });
    if (turnedTo > 0) follow.turnTo(turnedTo);
    const timeOf = (moment: number) => start + moment * hop;
    return { cents, rises, follow, timeOf, interval: () => follow.interval() * hop };
  };
  return {
    add: (samples) => {
      recent.add(samples);
      const cents = tune();
      if (cents === null) return;
      if (open === null) open = begin(cents);
      else if (open.cents !== cents) {
        open.rises.retune(cents);
        open = { ...open, cents };
      }
      const { rises, follow, timeOf, interval } = open;
      for (let next = rises.next(); next !== null; next = rises.next()) {
        const ofKeys = next;
        follow.add((step) => meanAt(ofKeys, keysOfStep[step]!));
      }
      const path = follow.path();
      if (spoilt === undefined && path.length >= ROOM_KNOWN) {
        spoilt = spoiltBy(recent, timeOf(path[0]!.moment));
      }
      const known = recent.end() / rate - Math.max(AFTER, Math.min(LOOKED_AT, SHARE * interval()));
      lights.follow(path.filter(({ moment }) => timeOf(moment) <= known));
    },
    turnTo: (start) => {
      if (open !== null && !open.follow.turnTo(start)) return;
      turnedTo = start;
      lights.turnTo(start);
    },
    heard: () => {
      const step = open?.follow.path().at(-1)?.step ?? turnedTo;
      if (spoilt) return { step, lit: { right: new Set(), left: new Set() }, spoilt };
      return { step, lit: lights.lit(), spoilt: null };
    },
  };
}

/** What is there once the tuning is known. Times in seconds of the sound. */
interface Hearing {
  readonly cents: number;
  readonly rises: LiveRises;
  readonly follow: LiveFollow;
  readonly timeOf: (moment: number) => number;
  readonly interval: () => number;
}

function meanAt(values: Float32Array, places: readonly number[]): number {
  let sum = 0;
  for (const place of places) sum += values[place]!;
  return sum / places.length;
}

type EvidenceAt = (at: number, interval: number, tuning: number) => Evidence;

/** Keeps what serves for any note while neither the player's tempo nor what is known of the tuning changes much. */
function evidenceOn({ sound, first }: Recent, keys: Range): EvidenceAt {
  let [madeFor, of]: [EvidenceOptions | null, ReturnType<typeof evidenceIn> | null] = [null, null];
  return (at, interval, tuning) => {
    const isSame =
      madeFor?.tuning === tuning && Math.abs(interval / madeFor.interval - 1) < SAME_INTERVAL;
    if (of === null || !isSame) {
      madeFor = { interval, tuning, keys };
      of = evidenceIn(sound, madeFor);
    }
    return of(at - first() / sound.rate);
  };
}

/** Whether the room can be heard at all without the piano depends on when the player began. */
function spoiltBy(recent: Recent, began: number): Spoilt | null {
  const { rate } = recent.sound;
  const from = Math.max(recent.first() / rate, began - QUIET_BEFORE);
  const room = roomOf({ samples: heldIn(recent, from), rate });
  if (room.isClipped) return 'loud';
  const isKnown = began - from >= LEAST_BEFORE;
  return isKnown && room.overNoise < QUIET_ENOUGH ? 'noise' : null;
}
