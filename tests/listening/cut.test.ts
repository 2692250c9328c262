/** Recordings of whole practices, put together from seeded playing, cut into the runs of which they were made. */
import { describe, expect, it } from 'vitest';
import { cutRuns } from '../../shared/listening/cut';
import { expectedOf } from '../../shared/listening/expected';
import { judge } from '../../shared/listening/judge';
import type { HeardNote, Take } from '../../shared/listening/take';
import { DECK, type Item, itemOf, type ItemId, roundItems } from '../../shared/music/deck';
import { scoreOf } from '../../shared/music/score-of';
import { OPTIONS } from '../formats/scores';
import { perform, type Planted, seededRandom } from './performer';

const bare = (items: readonly Item[]) =>
  scoreOf(items, { ...OPTIONS, fingeringOf: () => null, pedal: false });
const cut = (take: Take) => cutRuns(take, { contraryForm: 'formula', scoreOf: bare });

interface Piece {
  readonly items: readonly Item[];
  readonly tempo: number;
  /** Seconds before it. */
  readonly rest: number;
  readonly planted?: Planted;
}

/** The pieces one after another, and where each begins and ends. */
function record(pieces: readonly Piece[], random: () => number) {
  const notes: HeardNote[] = [];
  const places: { readonly from: number; readonly to: number }[] = [];
  let now = 0;
  for (const { items, tempo, rest, planted = {} } of pieces) {
    const played = perform(expectedOf(bare(items)), {
      random,
      tempo,
      spread: 0.005,
      planted,
    }).notes;
    const shift = now + rest - played[0]!.on;
    notes.push(...played.map((note) => ({ ...note, on: note.on + shift, off: note.off! + shift })));
    now = notes.at(-1)!.on;
    places.push({ from: played[0]!.on + shift, to: now });
  }
  const take: Take = { source: 'file', notes, pedal: [], hasTimeOfEachHand: true };
  return { take, places };
}

const single = (id: ItemId, more: Partial<Piece> = {}): Piece => ({
  items: [itemOf(id)],
  tempo: 240,
  rest: 3,
  ...more,
});

const idsOf = (pieces: readonly Piece[]) => {
  const { take } = record(pieces, seededRandom(11));
  return cut(take).map(({ item }) => item.id);
};

describe('a recording', () => {
  it('is cut into runs of any items, each at its time', () => {
    for (let seed = 0; seed < 6; seed++) {
      const random = seededRandom(seed);
      const pieces = Array.from({ length: 8 }, (): Piece => ({
        items: [DECK[Math.floor(random() * DECK.length)]!],
        tempo: 160 + 240 * random(),
        rest: 1.5 + 8 * random(),
      }));
      const { take, places } = record(pieces, random);
      const runs = cut(take);
      expect(runs.map(({ item }) => item.id)).toEqual(pieces.map(({ items }) => items[0]!.id));
      for (const [i, { from, to }] of runs.entries()) {
        expect(Math.abs(from - places[i]!.from)).toBeLessThan(0.05);
        expect(Math.abs(to - places[i]!.to)).toBeLessThan(0.05);
      }
    }
  });

  it('keeps apart the repeats of one item, with rests and without', () => {
    const twice = single('d.major-53.right.2');
    expect(idsOf([twice, twice, { ...twice, rest: 0.4 }])).toEqual(
      Array(3).fill(twice.items[0]!.id),
    );
  });

  it('is cut within a round, and knows the arpeggio that was repeated in it', () => {
    const items = roundItems('g', 'together.2');
    const round: Piece = {
      items,
      tempo: 300,
      rest: 1,
      planted: { restarts: [{ at: 36, from: 24, pause: 1 }] },
    };
    const ids = items.map(({ id }) => id);
    expect(idsOf([round])).toEqual([...ids.slice(0, 3), ...ids.slice(2)]);
  });

  it('takes a run that was broken off and begun again, or stopped and went on, for one', () => {
    const broken = single('f.minor-53.left.2', {
      planted: { restarts: [{ at: 6, from: 0, pause: 2 }] },
    });
    const stopped = single('a.major-64.right.2', {
      planted: { waits: [{ step: 8, seconds: 2.5 }] },
    });
    expect(idsOf([broken, stopped])).toEqual(['f.minor-53.left.2', 'a.major-64.right.2']);
    const { take } = record([broken], seededRandom(2));
    const [run] = cut(take);
    expect(judge(expectedOf(bare(broken.items)), run!.take)[0]).toMatchObject({
      right: 13,
      breaks: [6],
    });
  });

  it('has wrong and missed notes and is still known', () => {
    const faulty = single('eb.dominant-65.together.4', {
      planted: {
        wrong: [5, 12, 20].map((step) => ({ step, hand: 'right', by: 1 })),
        missed: [8, 16, 27].map((step) => ({ step, hand: 'left' })),
      },
    });
    expect(idsOf([faulty])).toEqual(['eb.dominant-65.together.4']);
  });

  it('of something else holds no runs, nor does a fragment', () => {
    const random = seededRandom(5);
    const notes = Array.from({ length: 120 }, (_, i): HeardNote => ({
      midi: 48 + Math.floor(30 * random()),
      on: i * 0.2,
      off: i * 0.2 + 0.2,
      loudness: 60,
      confidence: 1,
    }));
    expect(cut({ source: 'file', notes, pedal: [], hasTimeOfEachHand: true })).toEqual([]);
    expect(cut({ source: 'file', notes: [], pedal: [], hasTimeOfEachHand: true })).toEqual([]);
    expect(idsOf([single('c.major-53.right.4', { planted: { until: 8 } })])).toEqual([]);
  });
});
