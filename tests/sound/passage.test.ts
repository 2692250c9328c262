import { describe, expect, it } from 'vitest';
import {
  goOn,
  indexAt,
  type Passage,
  passageOf,
  type Playing,
  type Turn,
  turnsOf,
} from '../../src/sound/passage';
import { due } from '../../src/sound/walk';
import { note, score } from '../formats/scores';
import { fc } from '../learning/property';

const MADE = score(['C4', 'E4', 'G4', 'C5', 'G4', 'E4', 'C4', 'G3'].map((name) => note(name, 12)));
/** Four beats, so that a round lasts four seconds. */
const WHOLE = { from: 0, to: 96 };

const playingOf = (change: Partial<Playing> = {}): Playing => ({
  score: MADE,
  hands: 'together',
  stretch: WHOLE,
  repeats: false,
  beatsPerMinute: 60,
  piano: true,
  beat: true,
  ...change,
});

/** What begins before a time. */
const before = (passage: Passage, time: number): readonly Turn[] =>
  due(turnsOf(passage), 0 - passage.countInBeats, { now: time, lookAhead: 0 }).late;

/** Where a passage comes next after a time, and how long that takes. */
const placeAt = (passage: Passage, time: number) => {
  const turn = turnsOf(passage)(indexAt(passage, time))!;
  return { place: turn.place, wait: turn.time - time };
};

describe('a passage', () => {
  it('is counted in, played once and over when its last note is', () => {
    const turns = before(passageOf(playingOf(), 10, 2), 100);
    expect(turns.map(({ time, place }) => [time, place])).toEqual([
      [8, null],
      [9, null],
      ...MADE.right.map((_, i) => [10 + i / 2, 12 * i]),
      [14, null],
    ]);
    expect(turns.map(({ isEnd }) => isEnd).indexOf(true)).toBe(turns.length - 1);
    expect(turns.map(({ click }) => click?.[0] ?? '-').join('')).toBe('nna-n-n-n--');
  });

  it('sounds as long as it is written at its tempo, and not without the piano', () => {
    const [first] = before(passageOf(playingOf({ beatsPerMinute: 120 }), 0, 0), 1);
    expect(first!.strokes).toEqual([{ midi: 60, length: 0.25, isAccented: false }]);
    const [silent] = before(passageOf(playingOf({ piano: false }), 0, 0), 1);
    expect(silent).toMatchObject({ strokes: [], place: 0, click: 'accent' });
  });

  it('repeats without drift within an hour, at a tempo whose beats are no whole number of samples', () => {
    const stretch = { from: 24, to: 72 };
    const passage = passageOf(playingOf({ stretch, repeats: true, beatsPerMinute: 127 }), 0.2, 0);
    const rounds = (127 * 60) / 2;
    const turn = turnsOf(passage)(rounds * passage.moments.length)!;
    expect(turn).toMatchObject({ time: 3600.2, place: 24, click: 'accent', isEnd: false });
  });

  it.each([
    { beatsPerMinute: 0 },
    { beatsPerMinute: Number.NaN },
    { beatsPerMinute: Number.POSITIVE_INFINITY },
    { stretch: { from: 24, to: 24 } },
  ])('is refused as %j', (wrong) => {
    expect(() => passageOf(playingOf(wrong), 0, 0)).toThrow(RangeError);
  });
});

describe('a change on the way', () => {
  it('of the tempo goes on from the same place, as fast as is asked', () => {
    const slow = passageOf(playingOf(), 10, 0);
    // A quarter of a beat after the note at 24: three quarters of a quaver are left at 60, half of that time at 120.
    const fast = goOn(slow, playingOf({ beatsPerMinute: 120 }), 11.125);
    expect(placeAt(slow, 11.125)).toEqual({ place: 36, wait: 0.375 });
    expect(placeAt(fast, 11.125)).toEqual({ place: 36, wait: 0.1875 });
  });

  it('in a later repetition goes on in that place too', () => {
    const passage = passageOf(playingOf({ repeats: true }), 0, 0);
    const once = goOn(passage, playingOf(), 4 * 7 + 1.5);
    expect(placeAt(once, 4 * 7 + 1.5)).toEqual({ place: 36, wait: 0 });
    expect(before(once, 100).at(-1)).toMatchObject({ isEnd: true, time: 32 });
  });

  it('of the stretch goes on within it, or begins where it begins', () => {
    const passage = passageOf(playingOf(), 0, 0);
    const near = goOn(passage, playingOf({ stretch: { from: 24, to: 72 } }), 1.5);
    expect(placeAt(near, 1.5)).toEqual({ place: 36, wait: 0 });
    const far = goOn(passage, playingOf({ stretch: { from: 48, to: 96 } }), 1.5);
    expect(placeAt(far, 1.5)).toEqual({ place: 48, wait: 0 });
  });

  it('while beats are counted in counts the rest of them', () => {
    const passage = passageOf(playingOf(), 4, 4);
    const fast = goOn(passage, playingOf({ beatsPerMinute: 120 }), 2);
    const turns = before(fast, 3.4).filter(({ time }) => time >= 2);
    expect(turns.map(({ time, place }) => [time, place])).toEqual([
      [2, null],
      [2.5, null],
      [3, 0],
      [3.25, 12],
    ]);
  });

  it('loses no note and plays none twice, whenever it comes', () => {
    const moment = fc.double({ min: 0, max: 3.9, noNaN: true });
    fc.assert(
      fc.property(moment, fc.integer({ min: 20, max: 300 }), (time, beatsPerMinute) => {
        const passage = passageOf(playingOf(), 0, 0);
        const next = goOn(passage, playingOf({ beatsPerMinute }), time);
        const played = before(passage, time - 1e-6).map(({ place }) => place);
        const turns = before(next, 100).slice(indexAt(next, time));
        const rest = turns.map(({ place }) => place);
        expect([...played, ...rest]).toEqual([...MADE.right.map((_, i) => 12 * i), null]);
      }),
    );
  });
});
