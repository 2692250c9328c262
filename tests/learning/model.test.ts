import { fc } from './property';
import { describe, expect, it } from 'vitest';
import { type Fluency, JUDGES } from '../../shared/log/events';
import { dayOfNumber } from '../../shared/log/day';
import { DECK, itemOf, STAGES } from '../../shared/music/deck';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import {
  cloneLearner,
  EFFECTS,
  KINDNESS,
  type Learner,
  newLearner,
  TENTHS,
} from '../../shared/learning/learner';
import { observe, observeMark } from '../../shared/learning/observe';
import { practise } from '../../shared/learning/practice';
import { chanceEven, reachOf, workingTempo } from '../../shared/learning/prediction';
import { deckOf, readinessOf } from '../../shared/learning/readiness';

const item = itemOf('d.major-6.right.2');
const sameWay = itemOf('g.minor-64.right.2');
const otherWay = itemOf('d.major-6.left.2');
const DAY = 20_000;

const seen = (...runs: readonly (readonly [number, Fluency, number])[]): Learner => {
  const learner = newLearner();
  for (const [tempo, fluency, day] of runs)
    observe(learner, item, { tempo, fluency, day: DAY + day });
  return learner;
};
const reach = (learner: Learner, of = item, day = 0): number =>
  reachOf(learner, of, dayOfNumber(DAY + day)).tempo;

/** How many times faster the upper end of the reach is than the lower. */
const spread = (learner: Learner, day: number): number => {
  const { low, high } = reachOf(learner, item, dayOfNumber(DAY + day));
  return high / low;
};

/** Spread of runs, in octaves of tempo, that is learnt from these ratings again and again. */
function spreadAfter(ratings: readonly Fluency[]): number {
  const learner = newLearner();
  for (let i = 0; i < 400; i++) {
    const day = DAY + Math.floor(i / 10);
    observe(learner, item, { tempo: 180, fluency: ratings[i % ratings.length]!, day });
  }
  return Math.exp(learner.noise[0]!);
}

/** Where the levels of fluency begin for a student who rates like this again and again, at easy and hard tempos in turn. */
function cutsAfter(ratings: readonly Fluency[]): number[] {
  const learner = newLearner();
  for (let i = 0; i < 400; i++) {
    const day = DAY + Math.floor(i / 10);
    const tempo = workingTempo(learner, item, dayOfNumber(day)) * (i % 2 === 0 ? 0.9 : 1.4);
    observe(learner, item, { tempo, fluency: ratings[i % ratings.length]!, day });
  }
  return [...learner.cuts];
}

describe('the learner model', () => {
  it('expects a beginner to be even at 45 with one hand over two octaves, and less beyond', () => {
    const learner = newLearner();
    expect(reach(learner)).toBeCloseTo(4 * 45, 6);
    const reaches = STAGES.map((way) => reach(learner, itemOf(`c.major-53.${way}`)));
    expect(reaches).toEqual(reaches.toSorted((a, b) => b - a));
  });

  it('raises the reach by an effortless run, lowers it by one that broke down, and by more the greater the surprise', () => {
    const start = reach(newLearner());
    const after = ([0, 1, 2, 3, 4] as const).map((fluency) => reach(seen([180, fluency, 0])));
    expect(after).toEqual(after.toSorted((a, b) => a - b));
    expect(after[0]).toBeLessThan(start);
    expect(after[4]).toBeGreaterThan(start);
    expect(reach(seen([360, 3, 0]))).toBeGreaterThan(after[3]!);
  });

  it('lets a run speak most for its own item, less for its way, least for other ways', () => {
    const [before, after] = [newLearner(), seen([360, 3, 0])];
    const gain = (of: typeof item) => Math.log2(reach(after, of) / reach(before, of));
    expect(gain(item)).toBeGreaterThan(gain(sameWay));
    expect(gain(sameWay)).toBeGreaterThan(gain(otherWay));
    expect(gain(otherWay)).toBeGreaterThan(0);
  });

  it('narrows the spread with runs and widens it with days', () => {
    const learner = seen([180, 3, 0], [180, 2, 0], [180, 3, 0]);
    expect(spread(learner, 0)).toBeLessThan(spread(newLearner(), 0));
    expect(spread(learner, 30)).toBeGreaterThan(spread(learner, 0));
  });

  it('fades between days, and more slowly after success on separate days', () => {
    const once = seen([180, 3, 0]);
    expect(reach(once, item, 20)).toBeLessThan(reach(once, item, 10));
    const spaced = seen([180, 3, 0], [180, 3, 3], [180, 3, 9], [180, 3, 20]);
    const massed = seen([180, 3, 20], [180, 3, 20], [180, 3, 20], [180, 3, 20]);
    const kept = (learner: Learner) => reach(learner, item, 50) / reach(learner, item, 20);
    expect(kept(spaced)).toBeGreaterThan(kept(massed));
  });

  it('gives a working tempo at which "even" is likely eight times in ten', () => {
    const learner = seen([200, 3, 0], [220, 2, 0]);
    const day = dayOfNumber(DAY);
    expect(chanceEven(learner, item, workingTempo(learner, item, day), day)).toBeCloseTo(0.8, 3);
    expect(chanceEven(learner, item, reach(learner), day)).toBeCloseTo(0.5, 9);
  });

  it('finds the tempo at which an invented player is even half the time', () => {
    const truth = 300;
    let seed = 7;
    const random = () => (seed = (seed * 48_271) % 2_147_483_647) / 2_147_483_647;
    const learner = newLearner();
    for (let i = 0; i < 60; i++) {
      const tempo = workingTempo(learner, item, dayOfNumber(DAY + i));
      const noise = 0.33 * Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
      const over = Math.log2(truth / tempo) + noise;
      const fluency = over < -0.8 ? 0 : over < -0.4 ? 1 : over < 0 ? 2 : over < 0.45 ? 3 : 4;
      observe(learner, item, { tempo, fluency, day: DAY + i });
    }
    expect(Math.abs(Math.log2(reach(learner, item, 60) / truth))).toBeLessThan(0.2);
  });

  it('learns how much the runs of this student spread', () => {
    const steady = spreadAfter([3, 3, 2, 3]);
    const erratic = spreadAfter([4, 1, 3, 0, 4, 2]);
    expect(steady).toBeLessThan(0.33);
    expect(erratic).toBeGreaterThan(0.33);
  });

  it('learns from where on this student says effortless, and leaves even where it is', () => {
    const generous = cutsAfter([4, 2, 4, 3]);
    const sparing = cutsAfter([3, 2, 3, 2]);
    expect(generous[4]).toBeLessThan(sparing[4]!);
    for (const cuts of [generous, sparing]) {
      expect(cuts[3]).toBe(0);
      expect(cuts).toEqual(cuts.toSorted((a, b) => a - b));
    }
  });

  it('takes a run that breaks down once for a slip, and believes it when it comes again', () => {
    const before = seen(...Array.from({ length: 12 }, () => [180, 3, 0] as const));
    const lost = (times: number): number => {
      const learner = cloneLearner(before);
      const from = reach(learner);
      for (let i = 0; i < times; i++) observe(learner, item, { tempo: 150, fluency: 0, day: DAY });
      return Math.log2(from / reach(learner));
    };
    // An "uneven" at the reach surprises less and moves about as much.
    expect(lost(1)).toBeLessThan(0.15);
    expect(lost(6)).toBeGreaterThan(5 * lost(1));
    expect(lost(12)).toBeGreaterThan(0.4);
  });

  it('keeps the chance that each run was given beside what it became', () => {
    const learner = newLearner();
    let squares = 0;
    const runs: readonly (readonly [number, Fluency])[] = [
      [150, 3],
      [190, 2],
      [260, 1],
      [170, 4],
    ];
    for (const [tempo, fluency] of runs) {
      const chance = chanceEven(learner, item, tempo, dayOfNumber(DAY));
      squares += (chance - (fluency >= 3 ? 1 : 0)) ** 2;
      observe(learner, item, { tempo, fluency, day: DAY });
    }
    const { foretold } = learner;
    expect(foretold[3 * TENTHS]).toBeCloseTo(squares, 9);
    const sum = (from: number) =>
      foretold.slice(from, from + TENTHS).reduce((total, value) => total + value, 0);
    expect(sum(TENTHS)).toBe(2);
    expect(sum(2 * TENTHS)).toBe(4);
  });

  it('stays finite and a probability under any history', () => {
    const runs = fc.array(
      fc.record({
        index: fc.nat(DECK.length - 1),
        tempo: fc.integer({ min: 40, max: 600 }),
        fluency: fc.constantFrom<Fluency[]>(0, 1, 2, 3, 4),
        judge: fc.constantFrom(...JUDGES),
        pause: fc.nat(400),
      }),
      { maxLength: 120 },
    );
    fc.assert(
      fc.property(runs, (history) => {
        const learner = newLearner();
        let day = DAY;
        for (const { index, tempo, fluency, judge, pause } of history) {
          day += pause;
          observe(learner, DECK[index]!, { tempo, fluency, day, judge });
        }
        const chances = DECK.map((one) => chanceEven(learner, one, 240, dayOfNumber(day + 3)));
        expect(chances.every((chance) => chance >= 0 && chance <= 1)).toBe(true);
        expect([...learner.covariance].every(Number.isFinite)).toBe(true);
        const spreads = learner.effects.map((_, i) => learner.covariance[i * (EFFECTS + 1)]!);
        expect(spreads.slice(0, KINDNESS).every((one) => one > 0)).toBe(true);
        expect(spreads[KINDNESS]! > 0).toBe(history.some(({ judge }) => judge === 'teacher'));
      }),
    );
  });

  it('stays a probability when an examination after years is followed by a day before it, as a clock may be put back', () => {
    const learner = seen([200, 3, 0], [200, 3, 1]);
    for (let mark = 0; mark < 5; mark++) {
      observeMark(learner, item, { tempo: 200, fluency: 3, day: DAY + 2500, judge: 'teacher' });
    }
    expect(chanceEven(learner, item, 200, dayOfNumber(DAY + 100))).toBeGreaterThan(0.5);
    observe(learner, item, { tempo: 200, fluency: 3, day: DAY + 100 });
    expect(reach(learner, otherWay, 100)).toBeGreaterThan(0);
  });

  it('copies without sharing', () => {
    const learner = seen([180, 3, 0]);
    const copy = cloneLearner(learner);
    observe(copy, item, { tempo: 400, fluency: 4, day: DAY + 1 });
    expect(learner).toEqual(seen([180, 3, 0]));
    expect(copy).not.toEqual(learner);
  });
});

describe('readiness', () => {
  const day = dayOfNumber(DAY);

  it('is the mean of the chances over the deck that the programme asks for', () => {
    const readiness = readinessOf(newLearner(), DEFAULT_PROGRAMME, day);
    expect(readiness.items).toBe(4 * 7 * 11);
    expect(deckOf(DEFAULT_PROGRAMME)).toHaveLength(308);
    const chances = [...readiness.chances.values()];
    expect(readiness.share).toBeCloseTo(chances.reduce((a, b) => a + b) / 308, 12);
    expect([...readiness.byStage.keys()]).toEqual(STAGES.slice(0, 4));
  });

  it('falls with the days until the date', () => {
    const learner = seen([240, 4, 0], [240, 3, 0]);
    const on = (after: number) =>
      readinessOf(learner, DEFAULT_PROGRAMME, dayOfNumber(DAY + after)).chances.get(item.id)!;
    expect(on(60)).toBeLessThan(on(0));
  });

  it('takes a run of both hands over two octaves for part of one over four, once these were played', () => {
    const [two, four] = [itemOf('d.major-6.together.2'), itemOf('d.major-6.together.4')];
    const other = itemOf('d.minor-6.together.4');
    const fresh = newLearner();
    practise(fresh, two, DAY);
    expect(fresh.residual[four.index]).toBe(0);
    const learner = newLearner();
    practise(learner, four, DAY);
    const before = learner.residual[four.index]!;
    practise(learner, two, DAY + 1);
    const byTwo = learner.residual[four.index]! - before;
    expect(byTwo).toBeGreaterThan(0);
    practise(learner, two, DAY + 1);
    expect(learner.residual[four.index]! - before - byTwo).toBeLessThan(byTwo);
    expect(learner.residual[other.index]).toBe(0);
    const again = newLearner();
    practise(again, four, DAY);
    practise(again, four, DAY);
    expect(byTwo).toBeLessThan((again.residual[four.index]! - before) * 1.2);
  });
});
