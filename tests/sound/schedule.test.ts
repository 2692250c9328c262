import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beatAt,
  checkGrid,
  isAccented,
  timeOf,
  walkGrid,
  type Grid,
  type GridBeat,
} from '../../src/sound/schedule';
import { due, LOOK_AHEAD } from '../../src/sound/walk';

const grids = fc.record({
  start: fc.double({ min: 0, max: 100, noNaN: true }),
  beatsPerMinute: fc.integer({ min: 20, max: 400 }),
  countInBeats: fc.integer({ min: 0, max: 8 }),
  beatsPerBar: fc.option(fc.integer({ min: 1, max: 7 })),
});

const gridOf = (changes: Partial<Grid>): Grid => ({
  start: 10,
  beatsPerMinute: 120,
  countInBeats: 4,
  beatsPerBar: 4,
  ...changes,
});

interface Tick {
  /** Seconds since the tick before. */
  readonly wait: number;
  readonly lookAhead: number;
}

interface Walked {
  readonly now: number;
  readonly clicked: readonly GridBeat[];
  readonly told: readonly GridBeat[];
}

/** What each tick clicks and tells, the first one coming when the metronome is started. */
function walk(grid: Grid, ticks: readonly Tick[]): readonly Walked[] {
  let now = timeOf(grid, -grid.countInBeats) - 0.2;
  let clicked: GridBeat[] = [];
  const step = walkGrid(grid, { now: () => now, click: (beat) => clicked.push(beat) });
  return ticks.map(({ wait, lookAhead }) => {
    now += wait;
    clicked = [];
    const told = step(lookAhead);
    return { now, clicked, told };
  });
}

const indices = (beats: readonly GridBeat[]): number[] => beats.map((beat) => beat.index);

const ticksOf = (wait: fc.Arbitrary<number>, lookAhead: fc.Arbitrary<number>) =>
  fc.array(fc.record({ wait, lookAhead }), { minLength: 1, maxLength: 80 });

const seconds = (max: number) => fc.double({ min: 0, max, noNaN: true });

describe('the beats that are due', () => {
  it('come each once and in order, however the ticks jitter', () => {
    const ticks = ticksOf(seconds(3), fc.constantFrom(LOOK_AHEAD.visible, LOOK_AHEAD.hidden));
    fc.assert(
      fc.property(grids, ticks, (grid, jittered) => {
        const walked = walk(grid, jittered);
        const told = walked.flatMap((tick) => tick.told);
        expect(indices(told)).toEqual(told.map((_, place) => place - grid.countInBeats));
        const reached = Math.max(...walked.map(({ now }, i) => now + jittered[i]!.lookAhead));
        const next = told.length - grid.countInBeats;
        expect(timeOf(grid, next)).toBeGreaterThanOrEqual(reached);
        for (const beat of told) {
          expect(beat.time).toBe(grid.start + (beat.index * 60) / grid.beatsPerMinute);
        }
      }),
    );
  });

  it('are clicked unless their time has passed, and told in either case', () => {
    const ticks = ticksOf(seconds(3), fc.constant(LOOK_AHEAD.visible));
    fc.assert(
      fc.property(grids, ticks, (grid, jittered) => {
        for (const { now, clicked, told } of walk(grid, jittered)) {
          expect(clicked).toEqual(told.filter((beat) => beat.time >= now));
        }
      }),
    );
  });

  it.each([
    ['a busy page', 0.24, LOOK_AHEAD.visible],
    ['a hidden page that ticks once a second', 1, LOOK_AHEAD.hidden],
    ['a hidden page whose ticks are late besides', 1.9, LOOK_AHEAD.hidden],
  ])('are never late in %s', (_, longestWait, lookAhead) => {
    const ticks = ticksOf(seconds(longestWait), fc.constant(lookAhead));
    fc.assert(
      fc.property(grids, ticks, (grid, jittered) => {
        const start = { wait: 0, lookAhead };
        for (const { clicked, told } of walk(grid, [start, ...jittered])) {
          expect(clicked).toEqual(told);
        }
      }),
    );
  });

  it('lose none to a tick that comes a second late', () => {
    const grid = gridOf({ beatsPerMinute: 240 });
    const { late, ahead, next } = due((index) => beatAt(grid, index), 2, {
      now: 11.45,
      lookAhead: LOOK_AHEAD.visible,
    });
    expect(late.map(({ index, time }) => [index, time])).toEqual([
      [2, 10.5],
      [3, 10.75],
      [4, 11],
      [5, 11.25],
    ]);
    expect(indices(ahead)).toEqual([6]);
    expect(next).toBe(7);
  });

  it('do not drift within a day, at a tempo whose beats are no whole number of milliseconds', () => {
    const grid = gridOf({ start: 0.2, beatsPerMinute: 127 });
    expect(timeOf(grid, 127 * 60 * 24)).toBe(86_400.2);
  });
});

/** The accented beats from one index up to another. */
const accented = (grid: Grid, from: number, to: number): number[] =>
  Array.from({ length: to - from }, (_, i) => from + i).filter((index) => isAccented(grid, index));

describe('accents', () => {
  it('fall on the starts of the bars, counted backwards in the count-in', () => {
    expect(accented(gridOf({ beatsPerBar: 4 }), -4, 9)).toEqual([-4, 0, 4, 8]);
    expect(accented(gridOf({ beatsPerBar: 3 }), -4, 9)).toEqual([-3, 0, 3, 6]);
  });

  it('mark the end of the count-in where there are no bars', () => {
    expect(accented(gridOf({ beatsPerBar: null }), -4, 9)).toEqual([0]);
  });
});

describe('checkGrid', () => {
  it.each([
    { beatsPerMinute: 0 },
    { beatsPerMinute: -60 },
    { beatsPerMinute: Number.NaN },
    { beatsPerMinute: Number.POSITIVE_INFINITY },
    { countInBeats: -1 },
    { countInBeats: 1.5 },
    { beatsPerBar: 0 },
  ])('refuses %j', (wrong) => {
    expect(() => checkGrid(gridOf(wrong))).toThrow(RangeError);
  });

  it('accepts what can be beaten', () => {
    expect(() => checkGrid(gridOf({ countInBeats: 0, beatsPerBar: null }))).not.toThrow();
  });
});
