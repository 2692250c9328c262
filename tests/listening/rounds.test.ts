/** Rounds, other octaves, and what must not be held against the player. */
import { describe, expect, it } from 'vitest';
import { expectedOf } from '../../shared/listening/expected';
import { findingsOf } from '../../shared/listening/findings';
import { judge } from '../../shared/listening/judge';
import { itemOf, roundItems } from '../../shared/music/deck';
import { scoreOf } from '../../shared/music/score-of';
import { OPTIONS } from '../formats/scores';
import { perform, type Planted, seededRandom } from './performer';

const ITEMS = roundItems('e', 'together.2').slice(0, 4);
const ROUND = expectedOf(scoreOf(ITEMS, { ...OPTIONS, pedal: false }));
const SCORES = ITEMS.map((item) => scoreOf([item], { ...OPTIONS, pedal: false }));

const playRound = (planted: Planted, seed = 1) =>
  perform(ROUND, { random: seededRandom(seed), tempo: 320, spread: 0.004, planted });
const kindsOf = (planted: Planted) =>
  judge(ROUND, playRound(planted)).map((take, i) =>
    take === null ? null : findingsOf(take, SCORES[i]!).map(({ kind }) => kind),
  );

describe('a round', () => {
  it('has each of its notes once in each arpeggio, the shared ones in both', () => {
    expect(ROUND.parts).toEqual([
      { from: 0, to: 12 },
      { from: 12, to: 24 },
      { from: 24, to: 36 },
      { from: 36, to: 48 },
    ]);
    const takes = judge(ROUND, playRound({}));
    expect(takes.map((take) => take!.notes)).toEqual([26, 26, 26, 26]);
    expect(takes.map((take) => take!.right)).toEqual([26, 26, 26, 26]);
    expect(kindsOf({})).toEqual([[], [], [], []]);
  });

  it('tells the arpeggio that broke from those that went well', () => {
    expect(kindsOf({ waits: [{ step: 19, seconds: 0.2 }] })).toEqual([[], ['hesitation'], [], []]);
    expect(kindsOf({ restarts: [{ at: 30, from: 24, pause: 2 }] })).toEqual([
      [],
      [],
      ['break'],
      [],
    ]);
    expect(kindsOf({ restarts: [{ at: 16, from: 0, pause: 2 }] })).toEqual([[], ['break'], [], []]);
  });

  it('judges an arpeggio that was repeated by its last playing', () => {
    const takes = judge(ROUND, playRound({ restarts: [{ at: 36, from: 24, pause: 1.5 }] }));
    expect(takes.map((take) => take!.breaks)).toEqual([[], [], [], []]);
    expect(takes.map((take) => take!.right)).toEqual([26, 26, 26, 26]);
  });

  it('has nothing to say of arpeggios that were not played', () => {
    expect(judge(ROUND, playRound({ until: 24 })).map((take) => take !== null)).toEqual([
      true,
      true,
      false,
      false,
    ]);
    expect(judge(ROUND, { ...playRound({}), notes: [] })).toEqual([null, null, null, null]);
  });
});

const score = scoreOf([itemOf('d.major-53.right.2')], { ...OPTIONS, pedal: false });
const expected = expectedOf(score);
const play = (planted: Planted = {}) =>
  perform(expected, { random: seededRandom(3), tempo: 240, spread: 0.003, planted });

const far = (on: number) => ({ midi: 70, on, off: on + 0.1, loudness: 60, confidence: 1 });

describe('a take', () => {
  it('may be played an octave higher or lower', () => {
    for (const octave of [-12, 12]) {
      const take = play();
      const notes = take.notes.map((note) => ({ ...note, midi: note.midi + octave }));
      expect(judge(expected, { ...take, notes })[0]).toMatchObject({ right: 13, faults: [] });
    }
  });

  it('is not blamed for keys that are struck long before it or after it', () => {
    const take = play();
    const notes = [far(-3), ...take.notes, far(60)];
    expect(judge(expected, { ...take, notes })[0]).toMatchObject({ right: 13, faults: [] });
  });

  it('is not blamed for what was hardly heard', () => {
    const take = play({ wrong: [{ step: 4, hand: 'right', by: 1 }] });
    const notes = take.notes.map((note, i) => (i === 4 ? { ...note, confidence: 0.3 } : note));
    expect(judge(expected, { ...take, notes })[0]).toMatchObject({
      notes: 12,
      right: 12,
      faults: [],
    });
  });

  it('has no measures of what cannot be heard', () => {
    const take = play();
    const notes = take.notes.map((note) => ({ ...note, off: null, loudness: null }));
    const [measured] = judge(expected, { ...take, source: 'microphone', notes });
    expect(measured!.hands.right).toMatchObject({
      overlap: null,
      loudness: null,
      thumbAccent: null,
    });
    expect(measured!.hands.left).toBeNull();
    expect(measured!.lead).toBeNull();
  });

  it('keeps the overlap of its keys', () => {
    const loose = perform(expected, {
      random: seededRandom(9),
      tempo: 240,
      spread: 0.003,
      overlap: -0.05,
    });
    const [measured] = judge(expected, loose);
    expect(measured!.hands.right!.overlap).toBeCloseTo(-50, -1);
    expect(findingsOf(measured!, score).map(({ kind }) => kind)).toEqual(['gap']);
  });
});
