/** What a take says by its measures alone. The limits are proposals (P) unless marked at shared/log/take-limits.ts. */
import { describe, expect, it } from 'vitest';
import { heardFluency, heardOf } from '../../shared/log/heard';
import type { HandTake, RunTake } from '../../shared/log/run-take';

const hand = (change: Partial<HandTake> = {}): HandTake => ({
  waits: [null, 0, 1, -1, 0, 2, 0],
  unevenness: 9,
  overlap: 5,
  thumbLate: null,
  loudness: 4,
  thumbAccent: null,
  ...change,
});
/** Four notes of 125 ms, 9 ms uneven: what professionals do (1.5 units). */
const take = (change: Partial<RunTake> = {}, right: Partial<HandTake> = {}): RunTake => ({
  source: 'midi',
  certainty: 0.8,
  tempo: 480,
  drift: 0,
  notes: 40,
  right: 40,
  faults: [],
  breaks: [],
  lead: null,
  looseness: null,
  hands: { right: hand(right), left: null },
  ...change,
});
const fault = { kind: 'wrong', hand: 'right', step: 3, midi: 61 } as const;
const waits = (wait: number): Partial<HandTake> => ({ waits: [null, 0, 1, wait, 0, 2, 0] });

describe('what a take says', () => {
  it('is effortless when nothing stands out, and as sure as the take', () => {
    expect(heardOf(take(), 4)).toEqual({ fluency: 4, certainty: 0.8 });
  });

  it.each([
    ['broke off', take({ breaks: [7] }), 0],
    ['hardly any note right', take({ right: 29 }), 0],
    ['lost the beat', take({}, waits(500)), 1],
    ['many notes wrong', take({ right: 35 }), 1],
    ['hesitated', take({}, waits(120)), 2],
    ['two faults', take({ faults: [fault, fault] }), 2],
    ['uneven', take({}, { unevenness: 25 }), 2],
    ['a late thumb', take({}, { thumbLate: 30 }), 2],
    ['hands apart', take({ lead: -40 }), 2],
    ['one fault', take({ faults: [fault] }), 3],
    ['a gap at the joins', take({}, { overlap: -30 }), 3],
    ['faster and faster', take({ drift: 6 }), 3],
    ['evenness unknown', take({}, { unevenness: null }), 3],
  ] as const)('after "%s" is as the rule has it', (_, heard, fluency) => {
    expect(heardFluency(heard, 4)).toBe(fluency);
  });

  it('calls the beat lost after one beat, so sooner with three notes a beat', () => {
    const slow = take({ tempo: 240 }, waits(800));
    expect(heardFluency(slow, 4)).toBe(2);
    expect(heardFluency(slow, 3)).toBe(1);
  });
});
