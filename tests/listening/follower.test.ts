/** Where the player is, told while the playing goes on: every arpeggio, every way, clean and with planted faults. */
import { describe, expect, it } from 'vitest';
import { type Expected, expectedOf } from '../../shared/listening/expected';
import { type Follower, following } from '../../shared/listening/follower';
import type { HeardNote } from '../../shared/listening/take';
import { DECK, handsOf, roundItems, STARTING_NOTES, WAYS } from '../../shared/music/deck';
import type { Hand } from '../../shared/music/fingering/types';
import { scoreOf } from '../../shared/music/score-of';
import type { ContraryForm } from '../../shared/music/sequence';
import { OPTIONS } from '../formats/scores';
import { perform, type Planted, seededRandom } from './performer';

type Items = Parameters<typeof scoreOf>[0];
const expectedIn = (items: Items, contraryForm: ContraryForm = 'formula'): Expected =>
  expectedOf(scoreOf(items, { ...OPTIONS, contraryForm, pedal: false, fingeringOf: () => null }));

const pick = <T>(values: readonly T[], random: () => number): T =>
  values[Math.floor(random() * values.length)]!;

interface Told {
  readonly note: HeardNote;
  /** The step for which it stands; null for an extra note. */
  readonly step: number | null;
  readonly place: number;
}

/** Plays, and writes down where the follower takes the player to be after each note. */
function follow(expected: Expected, planted: Planted, seed: number, tempo = 320): readonly Told[] {
  const steps = new Map<number, number>();
  const onNote = (step: number, on: number) => void steps.set(on, step);
  const random = seededRandom(seed);
  const { notes } = perform(expected, { random, tempo, spread: 0.006, planted, onNote });
  // What is set is seldom what is played.
  const follower = following(expected, (60 / tempo) * (0.7 + 0.6 * random()));
  return notes.map((note) => {
    follower.add(note.midi, note.on);
    return { note, step: steps.get(note.on) ?? null, place: follower.step() };
  });
}

const partAt = ({ parts }: Expected, step: number): number =>
  parts.findLastIndex(({ from }) => from <= Math.max(0, step));

/** Notes. */
const UNCLEAR = 5;

/**
 * What is not as it should be: at the last note of each arpeggio the place is right, and no arpeggio is turned to before
 * its first note.
 */
function troubleIn(expected: Expected, told: readonly Told[]): readonly string[] {
  const ends = new Set(expected.parts.map(({ to }) => to));
  let reached = 0;
  let said = { step: -1, at: 0 };
  return told.flatMap(({ note, step, place }, i) => {
    reached = Math.max(reached, step ?? 0);
    // Who breaks off and begins again where the notes are those that come next, one of them left out: nobody can tell
    // for a while.
    const could = [said.step, said.step + 1, said.step + 2].find((one) =>
      expected.steps[one]?.some(({ key }) => key.midi === note.midi),
    );
    if (could !== undefined || i - said.at > UNCLEAR) {
      said = { step: Math.max(reached, could ?? 0), at: i };
    }
    const isEarly = partAt(expected, place) > partAt(expected, Math.max(reached, said.step));
    // The first note of an arpeggio that is begun again is no end.
    const before = told.slice(0, i).findLast((one) => one.step !== null && one.step !== step);
    const isLastOfStep = step !== null && told[i + 1]?.step !== step;
    const isEnd = isLastOfStep && ends.has(step) && before?.step === step - 1;
    const isWrong = isEarly || (isEnd && place !== step);
    return isWrong ? [`taken for step ${place} at note ${i}, which is of step ${step}`] : [];
  });
}

describe('the place of a clean run', () => {
  it('is right at every note of every item', () => {
    for (const [i, item] of DECK.entries()) {
      const expected = expectedIn([item], i % 2 === 0 ? 'formula' : 'plain');
      const told = follow(expected, {}, i, pick([160, 240, 400, 480], seededRandom(i)));
      expect([item.id, ...told.map(({ place }) => place)]).toEqual([
        item.id,
        ...told.map(({ step }) => step),
      ]);
    }
  });

  it('is right at every note while one hand comes some tens of milliseconds after the other', () => {
    const together = DECK.filter(({ way }) => handsOf(way) === 'together');
    for (const [i, item] of together.filter((_, j) => j % 7 === 0).entries()) {
      const leftLate = pick([-0.05, -0.03, 0.03, 0.05], seededRandom(i));
      const told = follow(
        expectedIn([item]),
        { leftLate },
        i,
        pick([160, 240, 400], seededRandom(i + 1)),
      );
      expect([item.id, ...told.map(({ place }) => place)]).toEqual([
        item.id,
        ...told.map(({ step }) => step),
      ]);
    }
  });

  it('is right at every note of every round', () => {
    for (const [i, way] of WAYS.entries()) {
      // Three starting notes of each way, all twelve in all.
      for (const note of STARTING_NOTES.filter((_, j) => j % 4 === i % 4)) {
        const expected = expectedIn(roundItems(note, way));
        const told = follow(expected, {}, i);
        expect(told.map(({ place }) => place)).toEqual(told.map(({ step }) => step));
      }
    }
  });
});

/** One fault at a place that is drawn, the first and the last notes of arpeggios among them. */
function fault(expected: Expected, hands: readonly Hand[], random: () => number): Planted {
  const last = expected.steps.length - 1;
  const step = Math.floor(random() * (last + 1));
  const hand = pick(hands, random);
  const part = expected.parts[partAt(expected, step)]!;
  return pick<() => Planted>(
    [
      () => ({ waits: [{ step, seconds: pick([0.2, 1, 4], random) }] }),
      () => ({ wrong: [{ step, hand, by: pick([-2, -1, 1, 2], random) }] }),
      () => ({ missed: [{ step, hand }] }),
      () => {
        const { midi } = expected.steps[step]!.find((note) => note.hand === hand)!.key;
        return { extra: [{ step: Math.min(step, last - 1), midi: midi + pick([-1, 1], random) }] };
      },
      () => ({
        restarts: [{ at: Math.min(step, last - 4), from: part.from, pause: pick([0, 2], random) }],
      }),
      () => ({ restarts: [{ at: Math.min(step, last - 4), from: 0, pause: 2 }] }),
      // A finished arpeggio once more.
      () => ({ restarts: [{ at: part.to, from: part.from, pause: 1.5 }] }),
    ],
    random,
  )();
}

it('is right at the end of each arpeggio of a round with a fault, and never turns too early', () => {
  for (let seed = 0; seed < 350; seed++) {
    const random = seededRandom(seed);
    const way = WAYS[seed % WAYS.length]!;
    const items = roundItems(pick(STARTING_NOTES, random), way);
    const from = Math.floor(random() * 9);
    const expected = expectedIn(items.slice(from, from + 3));
    const hands = handsOf(way);
    const planted = fault(expected, hands === 'together' ? ['right', 'left'] : [hands], random);
    const told = follow(expected, planted, seed);
    const what = `${seed} ${items[from]!.id} ${JSON.stringify(planted)}`;
    expect([what, ...troubleIn(expected, told)]).toEqual([what]);
  }
});

describe('a follower', () => {
  const expected = expectedIn(roundItems('e', 'right.2').slice(0, 2));
  const start = (step = 0) => {
    const follower = following(expected, 0.2);
    if (step > 0) follower.turnTo(step);
    return follower;
  };
  const play = (follower: Follower, from: number, to: number, octave = 0) => {
    for (let step = from; step < to; step++) {
      follower.add(expected.steps[step]![0]!.key.midi + octave, step * 0.2);
    }
  };

  it('is nowhere before the first note, and goes on from the arpeggio that was turned to', () => {
    expect(start().step()).toBe(-1);
    const follower = start(12);
    play(follower, 12, 15);
    expect(follower.step()).toBe(14);
    follower.turnTo(0);
    play(follower, 0, 3);
    expect(follower.step()).toBe(2);
  });

  it('is not led astray by a page that is turned late', () => {
    const follower = start();
    play(follower, 0, 14);
    follower.turnTo(12);
    play(follower, 14, 18);
    expect(follower.step()).toBe(17);
  });

  it('follows who sits an octave higher or lower', () => {
    for (const octave of [12, -12]) {
      const follower = start();
      play(follower, 0, 20, octave);
      expect(follower.step()).toBe(19);
      expect(follower.lit().right.size).toBe(20);
    }
  });

  it('stays where it is while other things are played', () => {
    const follower = start();
    play(follower, 0, 5);
    const place = follower.step();
    for (let i = 0; i < 20; i++) follower.add(61 + (i % 2), 3 + 0.2 * i);
    expect(follower.step() - place).toBeLessThanOrEqual(2);
  });

  it('lights what was played right, once: not a wrong note, nor what is begun again', () => {
    const follower = start();
    play(follower, 0, 4);
    follower.add(expected.steps[4]![0]!.key.midi + 1, 0.8);
    play(follower, 5, 8);
    expect([...follower.lit().right].toSorted((a, b) => a - b)).toEqual([0, 1, 2, 3, 5, 6, 7]);
    expect(follower.lit().left.size).toBe(0);
    for (let step = 0; step < 3; step++) {
      follower.add(expected.steps[step]![0]!.key.midi, 5 + step * 0.2);
    }
    expect([...follower.lit().right].toSorted((a, b) => a - b)).toEqual([0, 1, 2]);
  });
});
