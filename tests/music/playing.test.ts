import { describe, expect, it } from 'vitest';
import { PARTS_OF_BEAT, type Score } from '../../shared/music/score';
import { handsIn, lengthOf, momentsOf, soundsOf, type Stretch } from '../../shared/music/playing';
import { anyDrill, anyItemScore, note, score, timed } from '../formats/scores';
import { fc } from '../learning/property';

/** "60 from 0 to 24". */
const told = (made: Score): readonly string[] =>
  soundsOf(made, 'right').map(({ midi, start, end }) => `${midi} from ${start} to ${end}`);

describe('the sounds of a hand', () => {
  it('last until the next begins, all keys of a chord alike', () => {
    expect(told(score([note('C4 E4', 12), note('G4', 12)]))).toEqual([
      '60 from 0 to 12',
      '64 from 0 to 12',
      '67 from 12 to 24',
    ]);
  });

  it('overlap where they are held, but not their own repetition', () => {
    const held = { overlap: 4 };
    expect(told(score([note('C4', 6, held), note('D4', 6, held), note('D4', 6, held)]))).toEqual([
      '60 from 0 to 10',
      '62 from 6 to 12',
      '62 from 12 to 22',
    ]);
  });

  it('are none for rests and for keys that are only touched', () => {
    expect(told(score([note('C4', 6, { isSilent: true }), note('', 6), note('D4', 6)]))).toEqual([
      '62 from 12 to 18',
    ]);
  });

  it('tell accents', () => {
    const sounds = soundsOf(score([note('C4', 6, { isAccented: true }), note('D4', 6)]), 'right');
    expect(sounds.map(({ isAccented }) => isAccented)).toEqual([true, false]);
  });
});

describe('the moments of a stretch', () => {
  const made = score(
    [note('C4', 12), note('E4', 12, { overlap: 6 }), note('G4', 24)],
    [note('C3', 8), note('E3', 8), note('G3', 8), note('C3', 24)],
  );
  const placesOf = (hands: 'right' | 'left' | 'together', stretch: Stretch): readonly number[] =>
    momentsOf(made, hands, stretch).map(({ place }) => place);

  it('are the places at which the chosen hands or beats begin', () => {
    const stretch = { from: 0, to: 48 };
    expect(placesOf('right', stretch)).toEqual([0, 12, 24]);
    expect(placesOf('left', stretch)).toEqual([0, 8, 16, 24]);
    expect(placesOf('together', stretch)).toEqual([0, 8, 12, 16, 24]);
    expect(momentsOf(made, 'left', stretch).map(({ isBeat }) => isBeat)).toEqual([
      true,
      false,
      false,
      true,
    ]);
  });

  it('have the sounds of the chosen hands only', () => {
    const midis = momentsOf(made, 'left', { from: 0, to: 48 }).flatMap(({ sounds }) =>
      sounds.map(({ midi }) => midi),
    );
    expect(midis).toEqual([48, 52, 55, 48]);
  });

  it('begin at the beginning of the stretch, even between two notes, and hold nothing beyond its end', () => {
    expect(placesOf('right', { from: 6, to: 30 })).toEqual([6, 12, 24]);
    const [, second] = momentsOf(made, 'right', { from: 0, to: 24 });
    expect(second!.sounds).toMatchObject([{ midi: 64, start: 12, end: 24 }]);
  });

  it('are none of an empty stretch', () => {
    expect(placesOf('together', { from: 24, to: 24 })).toEqual([]);
  });

  it('tell all beats of a long note', () => {
    const long = score([note('C4', 72)]);
    expect(momentsOf(long, 'right', { from: 0, to: 72 }).map(({ place }) => place)).toEqual([
      0, 24, 48,
    ]);
  });
});

describe('any score', () => {
  it('sounds the same in stretches as in one', () => {
    fc.assert(
      fc.property(fc.oneof(anyItemScore, anyDrill), fc.nat(), (made, seed) => {
        const end = lengthOf(made);
        const middle = PARTS_OF_BEAT * (seed % (end / PARTS_OF_BEAT));
        const startsIn = (stretch: Stretch) =>
          momentsOf(made, 'together', stretch)
            .flatMap(({ sounds }) => sounds)
            .map(({ midi, hand, start }) => `${hand} ${midi} at ${start}`);
        const whole = startsIn({ from: 0, to: end });
        expect(
          startsIn({ from: 0, to: middle }).concat(startsIn({ from: middle, to: end })),
        ).toEqual(whole);
        const written = [...timed(made.right), ...timed(made.left)].filter((one) => !one.isSilent);
        expect(whole).toHaveLength(written.flatMap(({ keys }) => keys).length);
      }),
    );
  });
});

describe('a score', () => {
  it('is as long as its longer hand, and has the hands that play', () => {
    expect(lengthOf(score([], [note('C3', 24), note('', 12)]))).toBe(36);
    expect(handsIn(score([], [note('C3', 24)]))).toBe('left');
    expect(handsIn(score([note('C4', 24)]))).toBe('right');
    expect(handsIn(score([note('C4', 24)], [note('C3', 24)]))).toBe('together');
  });
});
