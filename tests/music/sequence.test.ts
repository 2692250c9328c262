import { describe, expect, it } from 'vitest';
import { chordOf } from '../../shared/music/chords';
import {
  DECK,
  handsOf,
  type Item,
  type ItemId,
  itemOf,
  motionOf,
  roundItems,
} from '../../shared/music/deck';
import {
  intervalCount,
  roundIntervals,
  roundNotes,
  roundSeconds,
  sequenceOf,
} from '../../shared/music/sequence';
import { midiOf } from '../../shared/music/theory';
import { hand } from './notation';

const stepsOf = (id: ItemId, form: 'formula' | 'plain' = 'formula') =>
  sequenceOf(itemOf(id), { contraryForm: form });

/** Where the formula pattern turns, or could: every two octaves. */
const turns = (which: 'right' | 'left') =>
  stepsOf('c.major-53.together.contrary')
    .filter((_, i) => i % 6 === 0)
    .map((step) => step[which]?.name)
    .join(' ');

const handsOn = ({ item }: { item: Item }): readonly ('right' | 'left')[] =>
  handsOf(item.way) === 'together' ? ['right', 'left'] : [handsOf(item.way) as 'right' | 'left'];

describe('the notes of an item', () => {
  it('goes two octaves up and down and plays the top note once', () => {
    const left = stepsOf('d.major-6.left.2');
    expect(hand(stepsOf('d.major-6.right.2'), 'right')).toBe(
      'D4 F4 Bb4 D5 F5 Bb5 D6 Bb5 F5 D5 Bb4 F4 D4',
    );
    expect(hand(left, 'left')).toBe('D3 F3 Bb3 D4 F4 Bb4 D5 Bb4 F4 D4 Bb3 F3 D3');
    expect(hand(left, 'right')).toBe('- - - - - - - - - - - - -');
  });

  it('puts a letter below the bottom note into the next octave of the notation', () => {
    expect(hand(stepsOf('d.diminished-7.right.2'), 'right')).toContain('D4 F4 Ab4 Cb5 D5');
    expect(midiOf('Cb5')).toBe(71);
    expect(hand(stepsOf('a.major-53.right.2'), 'right')).toMatch(/^A3 C#4 E4 A4/);
  });

  it('goes four octaves with the hands an octave apart', () => {
    const four = stepsOf('c.major-53.together.4');
    expect(hand(four, 'right')).toMatch(/^C3 E3 G3 C4 .* C7 G6 .* C3$/);
    expect(hand(four, 'left')).toMatch(/^C2 E2 G2 C3 .* C6 G5 .* C2$/);
    expect(four).toHaveLength(25);
  });

  it('plays the formula pattern: up, outwards and back, up, down, outwards and back, down', () => {
    expect(turns('right')).toBe('C3 C5 C7 C5 C7 C5 C7 C5 C3');
    expect(turns('left')).toBe('C2 C4 C2 C4 C6 C4 C2 C4 C2');
  });

  it('plays the plain contrary form outwards and back', () => {
    const plain = stepsOf('c.dominant-42.together.contrary', 'plain');
    expect(hand(plain, 'right')).toMatch(/^C4 D4 F#4 A4 C5 .* C6 A5 .* C4$/);
    expect(hand(plain, 'left')).toMatch(/^C3 A2 F#2 D2 C2 .* C1 D1 .* C3$/);
    expect(plain).toHaveLength(17);
  });

  const both = DECK.flatMap((item) =>
    (['formula', 'plain'] as const).map((contraryForm) => ({
      item,
      contraryForm,
      steps: sequenceOf(item, { contraryForm }),
    })),
  );

  it('has as many notes as the course says and ends where it began', () => {
    const wrong = both.filter(
      ({ item, contraryForm, steps }) =>
        steps.length !== intervalCount(item.chord, item.way, contraryForm) + 1 ||
        hand(steps.slice(0, 1), 'right') !== hand(steps.slice(-1), 'right') ||
        hand(steps.slice(0, 1), 'left') !== hand(steps.slice(-1), 'left'),
    );
    expect(wrong).toEqual([]);
  });

  it('lets the hands of an item play and the other rest', () => {
    const wrong = both.filter((one) =>
      one.steps.some(
        (step) =>
          (step.right !== null) !== handsOn(one).includes('right') ||
          (step.left !== null) !== handsOn(one).includes('left'),
      ),
    );
    expect(wrong).toEqual([]);
  });

  it('stays on the 88 keys and moves from chord note to chord note', () => {
    const wrong = both.filter((one) =>
      handsOn(one).some((which) => {
        const keys = one.steps.map((step) => step[which]!);
        const size = chordOf(one.item.chord).intervals.length;
        return keys.some((key, i) => {
          const tones = Math.abs(key.tone - (keys[i - 1] ?? key).tone);
          const isNext = i === 0 || tones === 1 || tones === size - 1;
          return key.midi < 21 || key.midi > 108 || key.midi !== midiOf(key.name) || !isNext;
        });
      }),
    );
    expect(wrong).toEqual([]);
  });

  it('keeps the hands an octave apart in parallel motion', () => {
    const parallel = DECK.filter(
      (item) => handsOf(item.way) === 'together' && motionOf(item.way) !== 'contrary',
    );
    const gaps = parallel.flatMap((item) =>
      sequenceOf(item).map((step) => step.right!.midi - step.left!.midi),
    );
    expect(new Set(gaps)).toEqual(new Set([12]));
  });
});

describe('a round', () => {
  it('shares the last note of each arpeggio with the first of the next', () => {
    const round = roundItems('d', 'right.2');
    expect(roundIntervals(round)).toBe(6 * 12 + 5 * 16);
    expect(roundNotes(round)).toBe(153);
    expect(roundNotes([])).toBe(0);
    const ends = round.map((item) => sequenceOf(item).at(-1)!.right!.midi);
    const starts = round.map((item) => sequenceOf(item)[0]!.right!.midi);
    expect(ends.slice(0, -1)).toEqual(starts.slice(1));
  });

  it('lasts as long as its intervals', () => {
    expect(roundSeconds(roundItems('d', 'right.2'), 152)).toBe(60);
  });
});
