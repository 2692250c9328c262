import { describe, expect, it } from 'vitest';
import { fingeringsOf } from '../../shared/music/fingering/result';
import type { Question } from '../../shared/music/fingering/types';
import { deckQuestions, keysOf } from './questions';

const best = (question: Question) => fingeringsOf(question).best;
const C_MAJOR = { keys: keysOf('c', 'major-53'), hand: 'right', octaves: 2 } as const;

describe('the positions of a run', () => {
  it.each([
    [C_MAJOR, ['123', '1235']],
    [{ ...C_MAJOR, hand: 'left' } as const, ['5421', '421']],
    [{ ...C_MAJOR, keys: keysOf('db', 'major-53') }, ['2', '124', '124']],
    [
      { ...C_MAJOR, keys: keysOf('gb', 'dominant-7'), hand: 'left' } as const,
      ['4321', '4321', '2'],
    ],
  ])('%j', (question, positions) => {
    const fingers = best(question).positions.map(({ notes }) =>
      notes.map(({ finger }) => finger).join(''),
    );
    expect(fingers).toEqual(positions);
  });

  it('hold every note of the run once, lowest first', () => {
    for (const question of deckQuestions()) {
      const notes = best(question).positions.flatMap((position) => position.notes);
      expect(notes.map(({ index }) => index)).toEqual(notes.map((_, i) => i));
      expect(notes.map(({ key }) => key)).toEqual(
        notes.map(({ key }) => key).toSorted((a, b) => a - b),
      );
    }
  });

  it('carry a caution where 3 and 4 have a major third, and more of them for a small hand', () => {
    const question = { ...C_MAJOR, keys: keysOf('c', 'dominant-43') };
    const widthsAt = (span: number) =>
      best({ ...question, span }).positions.map(({ stretches }) =>
        stretches.map(({ lower, upper, size }) => [lower.finger, upper.finger, size].join()),
      );
    expect(widthsAt(13)).toEqual([['3,4,4'], ['3,4,4']]);
    expect(widthsAt(8)).toEqual([['3,4,4'], ['3,4,4', '4,5,3']]);
  });
});

describe('the position changes of a run', () => {
  it('tell interval, fingers, key colours and kind, on the way up and back', () => {
    const { changes } = best({ ...C_MAJOR, keys: keysOf('bb', 'minor-53') });
    const told = changes.map(({ way, kind, from, to, size }) =>
      [way, kind, `${from.finger}-${to.finger}`, from.black, to.black, size].join(' '),
    );
    expect(told).toEqual([
      'up thumb under 3-1 true false 4',
      'up thumb under 3-1 true false 4',
      'down hand over 1-3 false true 4',
      'down hand over 1-3 false true 4',
    ]);
  });

  it('begin at the top where the run does', () => {
    const { changes } = best({ ...C_MAJOR, hand: 'left', start: 'high' });
    expect(changes.map(({ way, kind }) => `${way} ${kind}`)).toEqual([
      'down thumb under',
      'up hand over',
    ]);
  });

  it('are as hard up as down, and harder for a small hand', () => {
    for (const question of deckQuestions()) {
      const { plan, changes } = best(question);
      const ups = changes.filter(({ way }) => way === 'up').map(({ difficulty }) => difficulty);
      const downs = changes.filter(({ way }) => way === 'down').map(({ difficulty }) => difficulty);
      expect(downs.toReversed()).toEqual(ups);
      const small = best({ ...question, span: 9 });
      if (JSON.stringify(small.plan) !== JSON.stringify(plan)) continue;
      for (const [i, change] of small.changes.entries())
        expect(change.difficulty).toBeGreaterThan(changes[i]!.difficulty);
    }
  });

  it.each([
    // From a black key to a white one with 2 lies under the hand; on one level over a fourth is the widest turn.
    ['bb', 'dominant-7', 'right', 'easy'],
    ['c', 'dominant-42', 'right', 'medium'],
    ['b', 'minor-64', 'left', 'hard'],
  ] as const)('%s %s, %s hand: the first is %s', (note, chord, hand, level) => {
    expect(best({ keys: keysOf(note, chord), hand, octaves: 2 }).changes[0]!.level).toBe(level);
  });

  it('are spread over all three levels in the deck', () => {
    const levels = deckQuestions().flatMap((question) =>
      best(question).changes.map(({ level }) => level),
    );
    for (const level of ['easy', 'medium', 'hard'] as const) {
      const share = levels.filter((one) => one === level).length / levels.length;
      expect(share).toBeGreaterThan(0.2);
    }
  });
});
