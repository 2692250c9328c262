import { describe, expect, it } from 'vitest';
import { type OwnProblem, readOwn } from '../../shared/music/fingering/own';
import { fingersOfRun } from '../../shared/music/fingering/plan';
import { analyse, fingeringsOf } from '../../shared/music/fingering/result';
import type { Hand } from '../../shared/music/fingering/types';
import { fc } from '../learning/property';
import { anyQuestion, keysOf } from './questions';

const C_MAJOR = keysOf('c', 'major-53');
const read = (text: string, hand: Hand = 'right', keys = C_MAJOR) => readOwn(text, { keys, hand });

/** What typed digits become over three octaves, or the problem. */
function threeOctaves(text: string, hand: Hand = 'right', keys = C_MAJOR): string | OwnProblem {
  const own = read(text, hand, keys);
  return own.ok ? fingersOfRun(own.plan, 3).join('') : own.problem;
}

describe('a fingering typed by a person', () => {
  it.each([
    ['1235', 'right', '1231231235'],
    ['1 2 3 5', 'right', '1231231235'],
    ['1,2-4|5', 'right', '1241241245'],
    ['2124', 'right', '2124124124'],
    ['1231', 'right', '1231231231'],
    ['5421', 'left', '5421421421'],
    ['2142', 'left', '2142142142'],
    ['5 3 2 1 3 2 1', 'left', '5321321321'],
    ['1231235', 'right', '1231231235'],
    ['2312412', 'right', '2312412412'],
  ] as const)('%j, %s hand, goes on as %s', (text, hand, run) => {
    expect(threeOctaves(text, hand)).toBe(run);
  });

  it('may have another finger on every note of the first octave', () => {
    const own = read('231234123', 'right', keysOf('eb', 'diminished-7'));
    expect(own).toEqual({ ok: true, plan: { low: [2, 3], pattern: [3, 4, 1, 2], high: [3] } });
  });

  it('may have the fifth finger inside: it is costed, not refused', () => {
    const own = read('1251251');
    expect(own.ok).toBe(true);
    if (!own.ok) return;
    const question = { keys: C_MAJOR, hand: 'right', octaves: 2 } as const;
    const { cost } = analyse(question, own.plan);
    expect(cost.causes.innerFifth).toBeGreaterThan(0);
    expect(cost.total).toBeGreaterThan(fingeringsOf(question).best.cost.total);
  });

  it.each<[string, Hand, OwnProblem]>([
    ['', 'right', { kind: 'digits', found: '' }],
    ['12a5', 'right', { kind: 'digits', found: 'a' }],
    ['1236', 'right', { kind: 'digits', found: '6' }],
    ['12312', 'right', { kind: 'count', found: 5, wanted: [4, 7] }],
    ['1325', 'right', { kind: 'crossing', index: 1, from: 3, to: 2 }],
    ['1225', 'right', { kind: 'repeated', index: 1, from: 2, to: 2 }],
    ['1235', 'left', { kind: 'crossing', index: 1, from: 2, to: 3 }],
    ['1232345', 'right', { kind: 'crossing', index: 2, from: 3, to: 2 }],
  ])('%j, %s hand, cannot be played', (text, hand, problem) => {
    expect(threeOctaves(text, hand)).toEqual(problem);
  });

  it('has to be typed over two octaves when one does not show how it goes on', () => {
    const keys = keysOf('eb', 'diminished-7');
    expect(threeOctaves('23123', 'right', keys)).toEqual({ kind: 'unclear', wanted: 9 });
  });

  it('of two octaves is told when no octave of it could follow itself', () => {
    expect(threeOctaves('1212123')).toEqual({ kind: 'irregular' });
  });

  it('may have its exceptions at the upper end', () => {
    const own = read('321432132', 'left', keysOf('db', 'diminished-7'));
    expect(own).toEqual({ ok: true, plan: { low: [3], pattern: [3, 2, 1, 4], high: [2, 3] } });
  });

  it('reads back every fingering that was computed', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const { best, alternatives } = fingeringsOf({ ...question, octaves: 2 });
        for (const { plan, fingers } of [best, ...alternatives])
          expect(readOwn(fingers.join(''), question)).toEqual({ ok: true, plan });
      }),
    );
  });
});
