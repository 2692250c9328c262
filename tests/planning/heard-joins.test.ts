import { describe, expect, test } from 'vitest';
import { addDays } from '../../shared/log/day';
import type { LogEvent, RunEvent } from '../../shared/log/events';
import type { HandTake, RunTake } from '../../shared/log/run-take';
import type { ItemId } from '../../shared/music/deck';
import { weakestJoins } from '../../shared/planning/heard-joins';
import { replay } from '../../shared/planning/student';
import { event, programme, START } from '../learning/events';
import { takeWith } from '../learning/takes';

const OTHER = { unevenness: 9, overlap: 3, thumbLate: null, loudness: 4, thumbAccent: null };
const hand = (waits: HandTake['waits']): HandTake => ({ waits, ...OTHER });
/** Waits of a run, all of them on time but those that are given. */
const waits = (count: number, late: Readonly<Record<number, number>>): HandTake['waits'] =>
  Array.from({ length: count }, (_, step) => (step === 0 ? null : (late[step] ?? 0)));

interface Heard {
  readonly item: ItemId;
  readonly hands: RunTake['hands'];
  readonly day?: number;
  readonly certainty?: number;
}

function heard({ item, hands, day = 0, certainty = 1 }: Heard): RunEvent {
  const take = takeWith(hands, certainty);
  const body = { kind: 'run', item, tempo: 240, fluency: 2, pedal: false, take } as const;
  return event({ ...body, judge: 'player', entry: null }, day) as RunEvent & LogEvent;
}

const player = replay([programme()]);
const weakest = (runs: readonly RunEvent[], day = 0) =>
  weakestJoins(player, runs, addDays(START, day)).map(({ id, wait, takes, last }) => [
    id,
    wait,
    takes,
    last,
  ]);

// C major, right hand: 1 2 3 1 2 3 5 over two octaves, so the thumb goes under to note 3 and the hand over to note 10.
const RIGHT: ItemId = 'c.major-53.right.2';
const right = (late: Readonly<Record<number, number>>): RunTake['hands'] => ({
  right: hand(waits(13, late)),
  left: null,
});

describe('the weakest joins', () => {
  test('are those that wait, longest first; a note that is no join is none', () => {
    expect(weakest([heard({ item: RIGHT, hands: right({ 3: 60, 10: 120, 5: 400 }) })])).toEqual([
      ['c.major-53.right.join.10', 120, 1, START],
      ['c.major-53.right.join.3', 60, 1, START],
    ]);
  });

  test('are none where nothing was heard, or nothing clearly waits', () => {
    expect(weakest([])).toEqual([]);
    expect(weakest([heard({ item: RIGHT, hands: right({ 3: 19, 10: -60 }) })])).toEqual([]);
    const { take: _, ...unheard } = heard({ item: RIGHT, hands: right({ 3: 200 }) });
    expect(weakest([unheard])).toEqual([]);
  });

  test('are told from all octaves, and from both hands together', () => {
    // Over four octaves up to note 12, the thumb goes under to notes 3, 6 and 9.
    const four: RunTake['hands'] = { right: hand(waits(25, { 3: 30, 6: 60, 9: 90 })), left: null };
    expect(weakest([heard({ item: 'c.major-53.right.4', hands: four })])).toEqual([
      ['c.major-53.right.join.3', 60, 1, START],
    ]);
    const both = { right: hand(waits(13, {})), left: hand(waits(13, { 9: 80 })) };
    expect(weakest([heard({ item: 'c.major-53.together.2', hands: both })])).toEqual([
      ['c.major-53.left.join.9', 80, 1, START],
    ]);
  });

  test('weigh a take by how sure and how fresh it is', () => {
    const unsure = heard({ item: RIGHT, hands: right({ 3: 100 }), certainty: 0.25 });
    const sure = heard({ item: RIGHT, hands: right({ 3: 50 }), certainty: 1 });
    expect(weakest([unsure, sure])).toEqual([['c.major-53.right.join.3', 60, 2, START]]);
    // 28 days are two half-lives: what was sure then says as much as the unsure take of today.
    const later = heard({ item: RIGHT, hands: right({ 3: 100 }), certainty: 0.25, day: 28 });
    const last = addDays(START, 28);
    expect(weakest([later, sure], 28)).toEqual([['c.major-53.right.join.3', 75, 2, last]]);
    expect(weakest([later, sure], 0)).toEqual([['c.major-53.right.join.3', 50, 1, START]]);
  });

  test('pass over a take of which nothing is sure', () => {
    expect(weakest([heard({ item: RIGHT, hands: right({ 3: 200 }), certainty: 0 })])).toEqual([]);
  });

  test('put what was heard often before what was heard once, long ago', () => {
    const left: RunTake['hands'] = { right: null, left: hand(waits(13, { 9: 120 })) };
    const old = heard({ item: 'c.major-53.left.2', hands: left });
    const often = [24, 26, 28].map((day) => heard({ item: RIGHT, hands: right({ 10: 90 }), day }));
    expect(weakest([old, ...often], 28).map(([id]) => id)).toEqual([
      'c.major-53.right.join.10',
      'c.major-53.left.join.9',
    ]);
  });

  test('count a stop as no more than half a second, and a run in another form of contrary motion not at all', () => {
    expect(weakest([heard({ item: RIGHT, hands: right({ 3: 4000 }) })])[0]![1]).toBe(500);
    const formula = { right: hand(waits(13, { 3: 90 })), left: hand(waits(13, { 4: 90 })) };
    expect(weakest([heard({ item: 'c.major-53.together.contrary', hands: formula })])).toEqual([]);
  });
});
