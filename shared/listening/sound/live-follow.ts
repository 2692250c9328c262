/**
 * Where in the course the player is while the sound comes in: follow.ts without a future. Dynamic programming over steps and
 * moments, in which who goes elsewhere mostly begins an arpeggio again, as in follower-line.ts. The likeliest way to any
 * step at any moment is the place; how it came there may be seen otherwise a little later.
 */
import type { Expected } from '../expected';
import { costsOf, shortestOf, SHORTEST, STOP } from './intervals';

/** Rise from which on a note speaks for a step; a step of which nothing is heard costs as much. */
const FLOOR = 0.18;
/** Worth from which on the first note has been played. */
const BEGUN = 0.2;
/** Cost of beginning an arpeggio again, and of going elsewhere in this one or to the next. */
const RESTART = 2;
const JUMP = 3;
/** Moments that can be looked back on: nine seconds. */
const MEMORY = 512;
/** Intervals of which the usual one is the median, and how many at least. */
const USUAL_OF = 9;
const FEWEST = 3;
/** Steps after which nobody turns the page to what is being played. */
const JUST_BEGUN = 4;

/** A step that was begun, at a moment. */
export interface Begun {
  readonly step: number;
  readonly moment: number;
}

/** Where a way to a step comes from: its worth up to there, and the step before, which is -1 where it begins. */
interface Origin extends Begun {
  readonly worth: number;
}

const NOWHERE: Origin = { worth: -Infinity, step: -1, moment: -1 };
const BEGINNING: Origin = { ...NOWHERE, worth: 0 };

interface Pace {
  /** Moments from step to step to begin with. */
  readonly interval: number;
  /** Seconds of a moment. */
  readonly hop: number;
}

export class LiveFollow {
  /** By step and moment: how likely the way is that begins the step there, and where it comes from. */
  private readonly worths: Float32Array;
  private readonly backSteps: Int16Array;
  private readonly backMoments: Int32Array;
  /** The best moment of each step, and its worth. */
  private readonly bests: Float32Array;
  private readonly bestMoments: Int32Array;
  private usual = 0;
  /** What an interval of so many moments costs; no longer one is an interval. */
  private costs: Float32Array = new Float32Array();
  private now = -1;
  /** The step that is waited for at the beginning or after a turn. */
  private start = 0;
  private place: Begun | null = null;
  /** Of the step that is looked at. */
  private origin: Origin = NOWHERE;

  constructor(
    private readonly expected: Expected,
    private readonly pace: Pace,
  ) {
    const { length } = expected.steps;
    this.worths = new Float32Array(length * MEMORY).fill(-Infinity);
    this.backSteps = new Int16Array(length * MEMORY);
    this.backMoments = new Int32Array(length * MEMORY);
    this.bests = new Float32Array(length).fill(-Infinity);
    this.bestMoments = new Int32Array(length);
    this.playAt(pace.interval);
  }

  /** Moments from step to step. */
  interval(): number {
    return this.usual;
  }

  /** The likeliest way to where the player is now, as far as it can be looked back on. */
  path(): readonly Begun[] {
    const way: Begun[] = [];
    for (let one = this.place; one !== null && one.moment > this.now - MEMORY;) {
      way.push(one);
      const cell = cellOf(one);
      const step = this.backSteps[cell]!;
      one = step < 0 ? null : { step, moment: this.backMoments[cell]! };
    }
    return way.toReversed();
  }

  /** The player was turned to the arpeggio that begins at a step, and goes on from there; false if it has begun already. */
  turnTo(start: number): boolean {
    const step = this.place?.step ?? -1;
    if (step >= start && step < start + JUST_BEGUN) return false;
    this.worths.fill(-Infinity);
    this.bests.fill(-Infinity);
    this.start = start;
    this.place = null;
    return true;
  }

  /** The next moment, by how much each step rises at it: 0 to 1. */
  add(riseOf: (step: number) => number): void {
    this.now += 1;
    const column = this.now % MEMORY;
    for (let cell = column; cell < this.worths.length; cell += MEMORY)
      this.worths[cell] = -Infinity;
    const better: number[] = [];
    for (const step of this.reachable()) {
      const origin = this.originOf(step);
      const worth = origin.worth + riseOf(step) - FLOOR;
      const cell = cellOf({ step, moment: this.now });
      this.worths[cell] = worth;
      this.backSteps[cell] = origin.step;
      this.backMoments[cell] = origin.moment;
      if (worth > this.bests[step]!) better.push(step);
    }
    // Not before all have been looked at: of one moment only one step is begun.
    for (const step of better) {
      this.bests[step] = this.worths[cellOf({ step, moment: this.now })]!;
      this.bestMoments[step] = this.now;
    }
    if (better.length > 0) this.decide();
  }

  /** From the arpeggio before to the end of the next one, and the very first step. */
  private reachable(): readonly number[] {
    const { parts } = this.expected;
    const here = this.part();
    const from = parts[Math.max(0, here - 1)]!.from;
    const { to } = parts[Math.min(parts.length - 1, here + 1)]!;
    const near = Array.from({ length: to - from + 1 }, (_, i) => from + i);
    return from === 0 ? near : [0, ...near];
  }

  /** Index of the arpeggio that is being played; a shared step belongs to the one that it begins. */
  private part(): number {
    const step = this.place?.step ?? this.start;
    return Math.max(
      0,
      this.expected.parts.findLastIndex(({ from }) => from <= step),
    );
  }

  private originOf(step: number): Origin {
    // Again and again: what was taken for the first note may have been something else.
    this.origin = step === this.start ? BEGINNING : NOWHERE;
    if (step > 0) {
      this.offerInTime(step - 1);
      this.offerAfterStop(step - 1);
    }
    this.offerElsewhere(step);
    return this.origin;
  }

  /** From the step before, after about the usual time. */
  private offerInTime(before: number): void {
    const { now, worths, costs } = this;
    const last = Math.min(costs.length - 1, now);
    let [worth, far] = [-Infinity, 0];
    for (let k = shortestOf(this.usual); k <= last; k++) {
      const value = worths[before * MEMORY + ((now - k) % MEMORY)]! - costs[k]!;
      if (value > worth) [worth, far] = [value, k];
    }
    this.offer(worth, before, now - far);
  }

  private offerAfterStop(before: number): void {
    const moment = this.bestMoments[before]!;
    const isLater = this.now - moment >= this.costs.length;
    if (isLater) this.offer(this.bests[before]! - STOP, before, moment);
  }

  private offerElsewhere(step: number): void {
    const { place } = this;
    if (place === null || this.now - place.moment < SHORTEST * this.usual) return;
    this.offer(this.bests[place.step]! - this.priceOf(step), place.step, place.moment);
  }

  private offer(worth: number, step: number, moment: number): void {
    if (worth > this.origin.worth) this.origin = { worth, step, moment };
  }

  private priceOf(step: number): number {
    const { parts } = this.expected;
    const here = this.part();
    const { from, to } = parts[here]!;
    if (step === 0 || step === from || step === parts[here - 1]?.from) return RESTART;
    return (step > from && step <= to) || step === parts[here + 1]?.from ? JUMP : Infinity;
  }

  private decide(): void {
    const before = this.place?.step;
    const worth = this.bests.reduce((most, one) => Math.max(most, one), -Infinity);
    if (before === undefined && worth <= BEGUN) return;
    const step = this.bests.indexOf(worth);
    this.place = { step, moment: this.bestMoments[step]! };
    if (step !== before) this.learn();
  }

  /** The last step is still being put in its place. */
  private learn(): void {
    const way = this.path().slice(-USUAL_OF - 2, -1);
    const took = way
      .slice(1)
      .flatMap(({ step, moment }, i) =>
        step === way[i]!.step + 1 ? [moment - way[i]!.moment] : [],
      );
    if (took.length >= FEWEST) this.playAt(took.toSorted((a, b) => a - b)[took.length >> 1]!);
  }

  private playAt(interval: number): void {
    if (interval === this.usual) return;
    this.usual = interval;
    this.costs = costsOf(interval, this.pace.hop).subarray(0, MEMORY);
  }
}

const cellOf = ({ step, moment }: Begun): number => step * MEMORY + (moment % MEMORY);
