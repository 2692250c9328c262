import { describe, expect, it } from 'vitest';
import { engraved, lasting, notes, rightHand, score, staffOf, values } from './scores';

describe('the values of lengths (common practice, no source)', () => {
  it.each([
    ['a dotted rhythm', [18, 6, 6, 18], '8. 16 16 8.'],
    ['the same in threes', [16, 8, 8, 16], '4t 8t 8t 4t'],
    ['a dotted triplet, and plain quavers beside it', [12, 4, 8, 12, 12], '8.t 16t 8t 8 8'],
    ['notes on which one stops', [24, 48, 72, 96, 36, 12], '4 2 2. 1 4. 8'],
    ['a note across a beat', [18, 12, 18], '8. 16~ 16 8.'],
    ['the end of a drill', [6, 42], '16 8.~ 4'],
    ['what no single note lasts', [30, 18, 32, 16], '4~ 16 8. 4~ 8t 4t'],
    ['rests, which hide no beat', [-24, 24, -72, -6, 18], 'r4 4 r2 r4 r16 8.'],
    ['a quaver and a rest of a triplet', [16, -8, -8, 16], '4t r8t r8t 4t'],
  ])('write %s', (_, lengths, written) => {
    expect(values(rightHand(lasting(...lengths)))).toBe(written);
  });

  it('add up to the length, with one accidental and one finger, and hold at the end', () => {
    const [held, after] = notes('F#4 G4', 42);
    const line = [{ ...held!, fingers: [1] as const, isAccented: true, overlap: 3 }, after!];
    const pieces = engraved(rightHand([...notes('A4'), ...line]));
    expect(pieces.map(({ length }) => length)).toEqual([6, 18, 24, 24, 18]);
    expect(pieces.map(({ keys }) => keys[0]!.accidental)).toEqual([
      null,
      'sharp',
      null,
      null,
      null,
    ]);
    expect(pieces.map(({ keys }) => keys[0]!.finger)).toEqual([null, 1, null, null, null]);
    expect(pieces.map(({ isAccented }) => isAccented ?? false)).toEqual([
      false,
      true,
      false,
      false,
      false,
    ]);
    expect(pieces.map(({ overlap }) => overlap ?? 0)).toEqual([0, 0, 3, 0, 0]);
    expect(pieces.map(({ isFirstHeld }) => isFirstHeld)).toEqual([
      false,
      false,
      true,
      false,
      false,
    ]);
  });

  it('refuse what cannot be written', () => {
    expect(() => values(rightHand(lasting(1, 23)))).toThrow(RangeError);
  });
});

describe('beams', () => {
  it('join the sixteenths of a beat, and leave the last note alone', () => {
    const [staff] = staffOf(score(['c.major-53.right.2']));
    expect(staff!.beams).toEqual([
      [0, 1, 2, 3],
      [4, 5, 6, 7],
      [8, 9, 10, 11],
    ]);
    expect(staff!.triplets).toEqual([]);
  });

  it('join triplets by three, with the figure only where the score begins', () => {
    const triplets = score(['c.major-53.right.2'], 3);
    const systems = staffOf(triplets, 0, [
      { from: 0, to: 48 },
      { from: 48, to: Infinity },
    ]);
    const figures = systems.map(({ triplets: groups }) =>
      groups.map(({ group, hasFigure }) => `${group.join(' ')}${hasFigure ? ' with its 3' : ''}`),
    );
    expect(figures).toEqual([
      ['0 1 2 with its 3', '3 4 5'],
      ['0 1 2', '3 4 5'],
    ]);
  });

  it('leave the rest to brackets, and say 3 again where the rhythm has changed', () => {
    const [staff] = staffOf(rightHand(lasting(8, 8, 8, 16, 8, 12, 12, 8, 8, 8, 8, 8, 8)));
    expect(staff!.triplets).toEqual([
      { group: [0, 1, 2], hasBracket: false, hasFigure: true },
      { group: [3, 4], hasBracket: true, hasFigure: true },
      { group: [7, 8, 9], hasBracket: false, hasFigure: true },
      { group: [10, 11, 12], hasBracket: false, hasFigure: false },
    ]);
  });

  it('are parted by a rest, and a single note has none', () => {
    const [staff] = staffOf(rightHand(notes('C4 - E4 G4')));
    expect(staff!.beams).toEqual([[2, 3]]);
  });
});
