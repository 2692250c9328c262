import { describe, expect, it } from 'vitest';
import type { Fluency, LogEvent } from '../../shared/log/events';
import {
  DECK,
  itemOf,
  type ItemId,
  roundItems,
  stageIndex,
  type Way,
} from '../../shared/music/deck';
import { type DayPlan, type Entry, planDay } from '../../shared/planning/today';
import { reasonText } from '../../shared/planning/reasons';
import { applyEvents, newStudent, replay } from '../../shared/planning/student';
import { fc } from '../learning/property';
import { event, programme, run, START } from '../learning/events';
import { begun, ONLY_FOUR, onDay, played, practise } from './days';

const aside = (item: ItemId, isAside: boolean) => event({ kind: 'aside', item, aside: isAside });

const keysOf = (plan: DayPlan): readonly string[] => plan.entries.map((entry) => entry.key);
const roundOn = (way: Way, fluency: Fluency, tempo: number, day: number) =>
  roundItems('c', way).map(({ id }) => run(id, fluency, tempo, day));
/** What comes from C after a week and more of two octaves, with four on the first day and on one more. */
const waysAfter = (fourOn: number) => {
  const student = begun({ reached: 'together.4', notes: ['c', 'g'] });
  const events = [
    ...roundOn('together.4', 2, 100, 0),
    ...Array.from({ length: 9 }, (_, day) => roundOn('together.2', 3, 220, day)).flat(),
    ...roundOn('together.4', 2, 100, fourOn),
  ];
  applyEvents(student, events, new Set());
  const { entries } = planDay(student, onDay(9), 15);
  return entries.filter(({ note }) => note === 'c').map(({ way }) => way);
};

const isRound = (entry: Entry): boolean => entry.kind === 'round';

describe("today's list", () => {
  it('is empty without a programme', () => {
    expect(planDay(newStudent(), START, 20).entries).toEqual([]);
  });

  it('begins with rounds of the first stage from the notes of the programme', () => {
    const plan = planDay(begun({ notes: ['d', 'eb'] }), START, 10);
    expect(plan.entries[0]).toMatchObject({ key: 'd.right.2.1', kind: 'round', way: 'right.2' });
    expect(new Set(plan.entries.map((entry) => entry.note))).toEqual(new Set(['d', 'eb']));
  });

  it('MINUTES: fits the minutes and leaves less than the shortest entry unused', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 45 }), (minutes) => {
        const plan = planDay(begun(), START, minutes);
        expect(plan.seconds).toBeLessThanOrEqual(minutes * 60);
        expect(plan.seconds).toBeGreaterThan(minutes * 60 - 30);
        const sum = plan.entries.reduce((total, entry) => total + entry.seconds, 0);
        expect(plan.seconds).toBeCloseTo(sum, 6);
      }),
      { numRuns: 30 },
    );
  });

  it('MINUTES: makes a round longer where too little would be left for another, as far as chords lack much', () => {
    for (let minutes = 2; minutes <= 45; minutes++) {
      expect(planDay(begun(), START, minutes).entries.filter((entry) => !isRound(entry))).toEqual(
        [],
      );
    }
    expect(planDay(begun(), START, 0.5).entries.map((entry) => entry.kind)).toEqual(['single']);
  });

  it('NOTE: makes each entry another note, unless the programme has but one', () => {
    for (const plan of practise(begun(), [0, 1, 2, 3, 4, 5])) {
      const notes = plan.entries.map((entry) => entry.note);
      expect(notes.filter((note, i) => note === notes[i - 1])).toEqual([]);
    }
    expect(planDay(begun({ notes: ['g'] }), START, 20).entries.length).toBeGreaterThan(2);
  });

  it('TIMES: never asks for an item more than six times a day', () => {
    const plan = planDay(begun({ notes: ['g', 'a'] }), START, 240);
    const times = new Map<ItemId, number>();
    for (const item of plan.entries.flatMap((entry) => entry.items)) {
      times.set(item, (times.get(item) ?? 0) + 1);
    }
    expect(Math.max(...times.values())).toBe(6);
  });

  it('CHORDS: keeps the traditional order within a round of at least four chords', () => {
    const plans = practise(begun(), [0, 1, 2, 3, 4]);
    const rounds = plans.flatMap((plan) => plan.entries.filter(isRound));
    for (const { items, note, way } of rounds) {
      expect(items.length).toBeGreaterThanOrEqual(4);
      const order = roundItems(note, way).map((item) => item.id);
      expect(items).toEqual(order.filter((id) => items.includes(id)));
    }
  });

  it('has keys of its own for every entry of a day', () => {
    const keys = keysOf(planDay(begun({ notes: ['c', 'd'] }), START, 120));
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('SERVE: asks for two octaves for the sake of four, where two are not asked for', () => {
    const student = begun({ reached: 'together.4', notes: ['c', 'g'], stages: ONLY_FOUR });
    const both = (['together.2', 'together.4'] as const).flatMap((way) =>
      (['c', 'g'] as const).flatMap((note) => roundItems(note, way)),
    );
    applyEvents(
      student,
      both.map(({ id }) => run(id, 3, 90, 0)),
      new Set(),
    );
    // No near twins, and too few minutes for all that four octaves themselves could take.
    const entries = planDay(student, onDay(1), 12).entries.filter(
      ({ way }) => way === 'together.2',
    );
    const reasons = entries.map(({ reason }) => reason.kind);
    expect(reasons).toContain('serves');
    const serving = entries.find(({ reason }) => reason.kind === 'serves')!.reason;
    expect(reasonText(serving, 4)).toMatch(
      /^For four octaves, .* likely even at \d+ today; 60 is asked\.$/,
    );
  });

  it('SERVE: leaves two octaves out while four are set aside', () => {
    const student = begun({ reached: 'together.4', notes: ['c', 'd'], stages: ONLY_FOUR });
    const both = (['together.2', 'together.4'] as const).flatMap((way) =>
      (['c', 'd'] as const).flatMap((note) => roundItems(note, way)),
    );
    const fours = both.filter(({ way }) => way === 'together.4');
    applyEvents(
      student,
      [...both.map(({ id }) => run(id, 3, 90, 0)), ...fours.map(({ id }) => aside(id, true))],
      new Set(),
    );
    expect(planDay(student, onDay(1), 40).entries).toEqual([]);
  });

  it('SERVE: comes back to four octaves within a week where two are asked for, however much these might do for them', () => {
    expect(waysAfter(8)[0]).toBe('together.2');
    expect(waysAfter(1)[0]).toBe('together.4');
  });

  it('STAGE: asks only for stages that are open', () => {
    const student = begun();
    for (const plan of practise(student, [0, 1, 2])) {
      const ahead = plan.entries.flatMap((entry) =>
        entry.items.filter((id) => {
          const item = itemOf(id);
          return stageIndex(item.way) > student.stages.open[item.arpeggioIndex]!;
        }),
      );
      expect(ahead).toEqual([]);
    }
  });

  it('SITTING: a second list of the day goes on from the first, with keys of its own', () => {
    const student = begun({ notes: ['g', 'a'] });
    const first = planDay(student, START, 8);
    applyEvents(student, played(first, 0), new Set());
    const second = planDay(student, START, 240, 2);
    const times = new Map<ItemId, number>();
    for (const item of [...first.entries, ...second.entries].flatMap(({ items }) => items)) {
      times.set(item, (times.get(item) ?? 0) + 1);
    }
    expect(second.entries.length).toBeGreaterThan(0);
    expect(Math.max(...times.values())).toBe(6);
    const keys = [...keysOf(first), ...keysOf(second)];
    expect(new Set(keys).size).toBe(keys.length);
    const reasons = second.entries.map(({ reason }) => reason.kind);
    expect(reasons).toContain('again');
    expect(same(planDay(student, START, 240, 2), second)).toBe(true);
  });

  it('SITTING: fits its own minutes, and begins with what is worth most of what is left', () => {
    const student = begun();
    const first = planDay(student, START, 5);
    applyEvents(student, played(first, 0), new Set());
    const second = planDay(student, START, 10, 2);
    expect(second.seconds).toBeLessThanOrEqual(600);
    const morning = new Set(first.entries.flatMap(({ items }) => items));
    expect(second.entries[0]!.items.some((item) => morning.has(item))).toBe(false);
  });

  it('ASIDE: leaves out what was set aside until it is taken back', () => {
    const student = begun({ notes: ['c'] });
    applyEvents(student, [aside('c.major-53.right.2', true)], new Set());
    const without = planDay(student, START, 20).entries.flatMap((entry) => entry.items);
    expect(without).not.toContain('c.major-53.right.2');
    expect(without).toContain('c.minor-53.right.2');
    applyEvents(student, [aside('c.major-53.right.2', false)], new Set());
    const back = planDay(student, START, 20).entries.flatMap((entry) => entry.items);
    expect(back).toContain('c.major-53.right.2');
  });

  it('RETURN: does not flood after a week away', () => {
    const student = begun();
    const before = practise(student, [0, 1, 2, 3]).at(-1)!;
    const after = planDay(student, onDay(11), 20);
    expect(after.seconds).toBeLessThanOrEqual(20 * 60);
    expect(after.entries.length).toBeLessThanOrEqual(before.entries.length + 3);
    expect(after.entries.some((entry) => entry.reason.kind === 'rested')).toBe(true);
  });

  it('REASON: changes on the second day and says why', () => {
    const student = begun();
    const [first, second] = practise(student, [0, 1]);
    expect(keysOf(second!)).not.toEqual(keysOf(first!));
    const reasons = second!.entries.map((entry) => reasonText(entry.reason, 4));
    expect(reasons.some((text) => text.includes('yesterday'))).toBe(true);
    expect(reasons.every((text) => /^[A-Z].*\.$/.test(text))).toBe(true);
  });

  it('TEMPO: proposes tempos with a whole mark, no more than a fifth above the target', () => {
    const student = begun();
    practise(student, [0, 1, 2, 3, 4, 5, 6, 7], () => 4);
    for (const { tempo } of planDay(student, onDay(8), 30).entries) {
      expect(tempo % 4).toBe(0);
      expect(tempo).toBeLessThanOrEqual(1.2 * 240);
    }
  });
});

/** As text, to the last digit; much faster than a deep comparison of long arrays. */
const textOf = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) =>
    part instanceof Map || part instanceof Set || ArrayBuffer.isView(part)
      ? [...(part as Iterable<unknown>)]
      : part,
  );
const same = (a: unknown, b: unknown): boolean => textOf(a) === textOf(b);

describe('one truth', () => {
  const history = fc
    .array(
      fc.record({
        index: fc.nat(DECK.length - 1),
        fluency: fc.constantFrom<Fluency[]>(0, 1, 2, 3, 4),
        tempo: fc.integer({ min: 40, max: 400 }),
        pause: fc.nat(9),
        isVoided: fc.boolean(),
      }),
      { maxLength: 60 },
    )
    .map((runs): readonly LogEvent[] => {
      const begin = programme();
      let day = 0;
      const events = runs.map(({ index, fluency, tempo, pause }) => {
        day += pause;
        return run(DECK[index]!.id, fluency, tempo, day, `${DECK[index]!.id}.1`);
      });
      const voided = events.filter((_, i) => runs[i]!.isVoided).map(({ id }) => id);
      return [begin].concat(events, event({ kind: 'void', events: voided }, day));
    });

  it('SAME: same log, same student and same plan, in whatever order the log is read', () => {
    fc.assert(
      fc.property(history, fc.infiniteStream(fc.nat()), (events, order) => {
        const shuffled = events
          .map((one) => ({ one, key: order.next().value as number }))
          .toSorted((a, b) => a.key - b.key)
          .map(({ one }) => one);
        const [student, other] = [replay(events), replay(shuffled)];
        expect(same(other, student)).toBe(true);
        expect(same(planDay(other, onDay(700), 15), planDay(student, onDay(700), 15))).toBe(true);
      }),
      { numRuns: 20 },
    );
  });

  it('a log with voids is as good as one without what they void', () => {
    fc.assert(
      fc.property(history, (events) => {
        const last = events.at(-1)!;
        const voided = new Set(last.kind === 'void' ? last.events : []);
        const { learner, lastRuns, work, stages } = replay(events);
        const without = replay(events.filter(({ id }) => !voided.has(id)));
        expect(same(learner, without.learner)).toBe(true);
        expect(same(stages, without.stages)).toBe(true);
        expect(same([lastRuns, work], [without.lastRuns, without.work])).toBe(true);
      }),
      { numRuns: 20 },
    );
  });

  it('does not change the student it plans for', () => {
    const student = begun();
    practise(student, [0, 1]);
    const before = textOf(student);
    planDay(student, onDay(2), 30);
    expect(textOf(student)).toBe(before);
  });
});
