import { describe, expect, it } from 'vitest';
import { CHORD_IDS } from '../../shared/music/chords';
import {
  DECK,
  handsOf,
  isBlack,
  itemAt,
  itemOf,
  motionOf,
  OFF_PATH,
  parseItemId,
  roundItems,
  stageIndex,
  STAGES,
  STARTING_NOTES,
  WAYS,
} from '../../shared/music/deck';

describe('the deck', () => {
  it('holds 12 starting notes x 11 chords x 7 ways = 924 items with ids of their own', () => {
    expect(STARTING_NOTES.length * CHORD_IDS.length * WAYS.length).toBe(924);
    expect(new Set(DECK.map((item) => item.id)).size).toBe(924);
    expect(new Set(DECK.map((item) => item.arpeggio)).size).toBe(132);
  });

  it('has an id that round-trips for every item, and an index that is its place', () => {
    const wrong = DECK.filter(
      (item, place) =>
        parseItemId(item.id) !== item ||
        itemOf(item.id) !== item ||
        item.index !== place ||
        itemAt(item.arpeggioIndex, item.way) !== item ||
        item.id !== `${item.note}.${item.chord}.${item.way}`,
    );
    expect(wrong).toEqual([]);
  });

  it.each(['', 'd', 'd.major-6', 'h.major-6.right.2', 'd.major-6.right.contrary', '__proto__'])(
    'knows no item by the name "%s"',
    (text) => expect(parseItemId(text)).toBeNull(),
  );

  it('keeps readable ids', () => {
    expect(parseItemId('eb.dominant-65.together.contrary')).toMatchObject({
      note: 'eb',
      chord: 'dominant-65',
      way: 'together.contrary',
    });
  });

  it('has no contrary motion for one hand', () => {
    const contrary = WAYS.filter((way) => motionOf(way) === 'contrary');
    expect(contrary.map(handsOf)).toEqual(['together']);
  });

  it('puts white starting notes first and the stages in the order of the path', () => {
    expect(STARTING_NOTES.map(isBlack)).toEqual([...Array(7).fill(false), ...Array(5).fill(true)]);
    expect(STAGES.map(stageIndex)).toEqual([0, 1, 2, 3, 4]);
    expect(OFF_PATH.map(stageIndex)).toEqual([-1, -1]);
  });

  it('makes a round of the eleven chords in the order of the table', () => {
    const round = roundItems('gb', 'left.2');
    expect(round.map((item) => item.chord)).toEqual(CHORD_IDS);
    expect(new Set(round.map((item) => `${item.note} ${item.way}`))).toEqual(
      new Set(['gb left.2']),
    );
  });
});
