import { describe, expect, it } from 'vitest';
import type { Fluency } from '../../shared/log/events';
import { type ItemId, roundItems } from '../../shared/music/deck';
import { lookBackOf } from '../../shared/planning/look-back';
import { reasonText } from '../../shared/planning/reasons';
import { applyEvents } from '../../shared/planning/student';
import { run } from '../learning/events';
import { begun, ONLY_FOUR, practise } from './days';

/** A player whose hands stop together over four octaves and do all else with ease. */
const stuckAtFour = (item: ItemId): Fluency => (item.endsWith('together.4') ? 1 : 4);

/** A player whose left hand breaks down. */
const weakLeft = (item: ItemId): Fluency => (item.includes('.left.') ? 0 : 4);

describe('look-back', () => {
  it('BACK: goes back a stage with every tenth entry of a note, in turn', () => {
    const days = Array.from({ length: 14 }, (_, i) => i);
    const plans = practise(begun({ reached: 'together.4', notes: ['c', 'd'] }), days);
    const ofC = plans.flatMap((plan) => plan.entries.filter((entry) => entry.note === 'c'));
    const back = ofC.flatMap((entry, i) => (entry.reason.kind === 'look-back' ? [i] : []));
    expect(back.length).toBeGreaterThan(3);
    expect(back.every((place) => place % 10 === 9)).toBe(true);
    const ways = back.map((place) => ofC[place]!.way);
    expect(new Set(ways)).toEqual(new Set(['right.2', 'left.2', 'together.2']));
  });

  it('BACK: goes back to the hand that lags behind the other, and not to that other', () => {
    const student = begun({ reached: 'together.4', notes: ['c', 'd'] });
    const alone = (['c', 'd'] as const).flatMap((note) =>
      (['right.2', 'left.2'] as const).flatMap((way) => roundItems(note, way)),
    );
    applyEvents(
      student,
      alone.map(({ id }) => run(id, weakLeft(id), 160, 0)),
      new Set(),
    );
    const days = Array.from({ length: 14 }, (_, i) => i + 1);
    const plans = practise(student, days, weakLeft);
    const ofC = plans.flatMap((plan) => plan.entries.filter((entry) => entry.note === 'c'));
    const back = ofC.flatMap((entry, i) => (entry.reason.kind === 'look-back' ? [i] : []));
    expect(back.length).toBeGreaterThan(1);
    expect(back.every((place) => place % 10 === 9)).toBe(true);
    const ways = back.map((place) => ofC[place]!.way);
    expect(new Set(ways)).toEqual(new Set(['left.2', 'together.2']));
    const text = ofC
      .map(({ reason }) => reasonText(reason, 4))
      .find((one) => one.includes('lags behind'));
    expect(text).toMatch(
      /^Back to left hand, two octaves, as every tenth time, to the hand that lags behind the other\./,
    );
  });

  it('BACK: does not go back to two octaves together that came lately anyway', () => {
    const ways = ['right.2', 'left.2', 'together.2', 'together.4'] as const;
    const backAfter = (entries: number, pause: number) => {
      const student = begun({ reached: 'together.4', notes: ['c', 'd'] });
      const all = ways.flatMap((way) => roundItems('c', way));
      const again = roundItems('c', 'together.4');
      applyEvents(
        student,
        [
          ...all.map(({ id }) => run(id, 3, 160, 0)),
          ...again.map(({ id }) => run(id, 3, 160, pause)),
        ],
        new Set(),
      );
      return lookBackOf(student, 'c', new Map([['c', entries]]))?.way;
    };
    expect(backAfter(29, 5)).toBeUndefined();
    expect(backAfter(29, 12)).toBe('together.2');
    expect(backAfter(19, 5)).toBe('left.2');
  });

  it('BACK: does not name a hand that lags where the hands are not yet together', () => {
    const student = begun({ reached: 'left.2', notes: ['c', 'd'] });
    const slowLeft = roundItems('c', 'left.2').map(({ id }) => run(id, 3, 80, 0));
    const fastRight = roundItems('c', 'right.2').map(({ id }) => run(id, 4, 160, 0));
    applyEvents(student, [...fastRight, ...slowLeft], new Set());
    const after = (entries: number) => lookBackOf(student, 'c', new Map([['c', entries]]));
    expect(after(4)).toBeNull();
    expect(after(9)).toEqual({ way: 'right.2', isLagging: false });
  });

  it('BACK: looks back at single hands over four octaves when four together are stuck', () => {
    const student = begun({ reached: 'together.4', notes: ['c', 'd'], stages: ONLY_FOUR });
    const plans = practise(
      student,
      Array.from({ length: 20 }, (_, i) => i),
      stuckAtFour,
    );
    const ways = plans.flatMap((plan) =>
      plan.entries.filter((entry) => entry.reason.kind === 'look-back').map((entry) => entry.way),
    );
    expect(ways).toContain('right.4');
  });
});
