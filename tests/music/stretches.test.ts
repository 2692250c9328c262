import { describe, expect, it } from 'vitest';
import { itemOf, roundItems } from '../../shared/music/deck';
import { lengthOf, momentsOf } from '../../shared/music/playing';
import { PARTS_OF_BEAT, type Score } from '../../shared/music/score';
import { scoreOf } from '../../shared/music/score-of';
import { type NamedStretch, stretchesOf } from '../../shared/music/stretches';
import { anyDrill, anyItemScore, anyRoundScore, note, OPTIONS, score } from '../formats/scores';
import { fc } from '../learning/property';

const ofKind = (made: Score, kind: NamedStretch['kind']) =>
  stretchesOf(made)
    .filter((one) => one.kind === kind)
    .map(({ from, to }) => [from / PARTS_OF_BEAT, to / PARTS_OF_BEAT]);

describe('the stretches of an item', () => {
  const made = scoreOf([itemOf('d.major-53.right.2')], OPTIONS);

  it('are all of it, the way up with the turn, and the way down', () => {
    // 13 notes in fours, the last of which lasts a beat: the top comes in the middle of the second beat.
    expect(stretchesOf(made)[0]).toMatchObject({ kind: 'all', from: 0, to: 96 });
    expect(ofKind(made, 'up')).toEqual([[0, 2]]);
    expect(ofKind(made, 'down')).toEqual([[1, 4]]);
  });

  it('are two beats around each position change', () => {
    const changes = stretchesOf(made).flatMap((one) => (one.kind === 'change' ? [one] : []));
    expect(changes.length).toBeGreaterThan(0);
    for (const { from, to, note: at } of changes) {
      expect(to - from).toBe(2 * PARTS_OF_BEAT);
      expect(at.place).toBeGreaterThan(from);
      expect(at.place).toBeLessThan(to);
      expect(at.change).not.toBeNull();
    }
  });

  it('are not halves in contrary motion, where there is no one top', () => {
    const contrary = scoreOf([itemOf('d.major-53.together.contrary')], OPTIONS);
    expect(ofKind(contrary, 'up')).toEqual([]);
    expect(ofKind(contrary, 'down')).toEqual([]);
  });

  it('are not halves where the music goes down first', () => {
    expect(ofKind(score([note('C5', 24), note('C4', 24), note('C5', 24)]), 'up')).toEqual([]);
  });
});

it('of a round are its arpeggios too', () => {
  const round = scoreOf(roundItems('d', 'right.2').slice(0, 3), OPTIONS);
  // Each of 12 notes in fours: three beats, and the beat that begins the next.
  expect(ofKind(round, 'arpeggio')).toEqual([
    [0, 4],
    [3, 7],
    [6, 10],
  ]);
});

it('of any score are in whole beats, within it, and each can be played', () => {
  fc.assert(
    fc.property(fc.oneof(anyItemScore, anyRoundScore, anyDrill), (made) => {
      for (const stretch of stretchesOf(made)) {
        expect(stretch.from % PARTS_OF_BEAT).toBe(0);
        expect(stretch.to % PARTS_OF_BEAT).toBe(0);
        expect(stretch.to).toBeLessThanOrEqual(lengthOf(made));
        expect(momentsOf(made, 'together', stretch).length).toBeGreaterThan(0);
      }
    }),
    { numRuns: 60 },
  );
});
