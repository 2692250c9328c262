import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../shared/log/day';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { type Item, type ItemId, itemOf, roundItems, STAGES } from '../../shared/music/deck';
import { type Learner, newLearner } from '../../shared/learning/learner';
import { observe } from '../../shared/learning/observe';
import { reachOf } from '../../shared/learning/prediction';
import { deckOf } from '../../shared/learning/readiness';
import { nextProbe, placedStage, PROBES, stageReaches } from '../../shared/planning/placement';
import { START } from '../learning/events';

const deck = deckOf(DEFAULT_PROGRAMME);

const spread = (learner: Learner): number =>
  deck.reduce((sum, item) => {
    const { tempo, high } = reachOf(learner, item, START);
    return sum + Math.log2(high / tempo);
  }, 0) / deck.length;

/** Rates each probe as a player would who can play every item at these notes a minute. */
function placed(canPlay: (item: Item) => number, probes = PROBES) {
  const learner = newLearner();
  const items: Item[] = [];
  const tempos: number[] = [];
  for (let i = 0; i < probes; i++) {
    const { item, tempo } = nextProbe(learner, DEFAULT_PROGRAMME, { day: START })!;
    items.push(item);
    tempos.push(tempo);
    const over = Math.log2(canPlay(item) / tempo);
    const fluency = over > 0.45 ? 4 : over > 0 ? 3 : over > -0.4 ? 2 : over > -0.8 ? 1 : 0;
    observe(learner, item, { tempo, fluency, day: dayNumber(START) });
  }
  return { learner, items, tempos };
}

describe('the reach of a stage', () => {
  it('is the middle of its items, and narrower after the probes', () => {
    const [before, after] = [newLearner(), placed(() => 200).learner].map((learner) =>
      stageReaches(learner, DEFAULT_PROGRAMME, START),
    );
    expect(after!.map(({ stage }) => stage)).toEqual(STAGES.slice(0, 4));
    for (const [i, { tempo, low, high }] of after!.entries()) {
      // Symmetrical in octaves.
      expect(tempo / low).toBeCloseTo(high / tempo, 6);
      expect(high / low).toBeLessThan(before![i]!.high / before![i]!.low);
      expect(Math.abs(Math.log2(tempo / 200))).toBeLessThan(0.2);
    }
  });
});

describe('placement', () => {
  it('asks for another item each time, of every stage, and for most notes and chords', () => {
    const { items } = placed(() => 200);
    expect(new Set(items).size).toBe(PROBES);
    expect(new Set(items.map(({ way }) => way))).toEqual(new Set(STAGES.slice(0, 4)));
    expect(new Set(items.map(({ note }) => note)).size).toBeGreaterThanOrEqual(6);
    expect(new Set(items.map(({ chord }) => chord)).size).toBeGreaterThanOrEqual(8);
  });

  it('makes the reach sharper with each probe, and sharper than probing one item again and again', () => {
    const spreads = Array.from({ length: PROBES + 1 }, (_, n) =>
      spread(placed(() => 200, n).learner),
    );
    expect(spreads).toEqual(spreads.toSorted((a, b) => b - a));
    const learner = newLearner();
    for (let i = 0; i < PROBES; i++) {
      observe(learner, deck[0]!, { tempo: 180, fluency: 3, day: dayNumber(START) });
    }
    expect(spreads.at(-1)).toBeLessThan(spread(learner));
  });

  it('places a player where it stops, and a beginner at the start', () => {
    const halfWay = placed((item) => (item.way === 'together.4' ? 60 : 260)).learner;
    expect(placedStage(halfWay, DEFAULT_PROGRAMME, START)).toBe('together.2');
    expect(placedStage(placed(() => 320).learner, DEFAULT_PROGRAMME, START)).toBe('together.4');
    expect(placedStage(placed(() => 50).learner, DEFAULT_PROGRAMME, START)).toBe('right.2');
  });

  it('proposes tempos with a whole mark', () => {
    const probe = nextProbe(newLearner(), { ...DEFAULT_PROGRAMME, grouping: 3 }, { day: START })!;
    expect(probe.tempo % 3).toBe(0);
  });

  it('PLACE: begins with each hand alone', () => {
    const ways = placed(() => 200).items.map(({ way }) => way);
    expect(new Set(ways.slice(0, 2))).toEqual(new Set(['right.2', 'left.2']));
    expect(ways.slice(2)).toContain('together.4');
  });

  it('PLACE: never goes faster than a fifth above the target', () => {
    const { tempos } = placed(() => 1000, 20);
    expect(Math.max(...tempos)).toBe(288);
  });

  it('PLACE: does not lead a beginner beyond what is out of reach', () => {
    const { items } = placed(() => 30);
    expect(new Set(items.map(({ way }) => way))).toEqual(new Set(['right.2', 'left.2']));
  });

  it('passes over what it is told to, and has an end', () => {
    const programme = { ...DEFAULT_PROGRAMME, notes: ['d'] as const };
    const { item } = nextProbe(newLearner(), programme, { day: START })!;
    const without = new Set([item.id]);
    expect(nextProbe(newLearner(), programme, { day: START, without })!.item).not.toBe(item);
    const alone = (['right.2', 'left.2'] as const).flatMap((way) => roundItems('d', way));
    const all = new Set(alone.map(({ id }) => id));
    expect(nextProbe(newLearner(), programme, { day: START, without: all })).toBeNull();
  });

  it('keeps to the chords that the programme asks for', () => {
    const { stages } = DEFAULT_PROGRAMME;
    const step = { asked: false, target: 240 };
    const programme = {
      ...DEFAULT_PROGRAMME,
      stages: {
        ...stages,
        'right.2': { ...stages['right.2'], chords: ['major-53', 'minor-53'] as const },
        'left.2': step,
        'together.2': step,
        'together.4': { ...stages['together.4'], chords: ['major-53'] as const },
      },
    };
    const chordsOf = (way: string): ReadonlySet<string> => {
      const without = new Set<ItemId>();
      const learner = newLearner();
      for (;;) {
        const probe = nextProbe(learner, programme, { day: START, without });
        if (probe === null) break;
        without.add(probe.item.id);
      }
      return new Set([...without].filter((id) => id.endsWith(way)).map((id) => itemOf(id).chord));
    };
    expect(chordsOf('right.2')).toEqual(new Set(['major-53', 'minor-53']));
    expect(chordsOf('left.2')).toEqual(new Set(['major-53', 'minor-53']));
  });

  it('asks for one hand only where the programme does', () => {
    const { stages } = DEFAULT_PROGRAMME;
    const none = { asked: false, target: 240 };
    const programme = {
      ...DEFAULT_PROGRAMME,
      stages: { ...stages, 'left.2': none, 'together.2': none, 'together.4': none },
    };
    const learner = newLearner();
    observe(learner, itemOf('d.major-53.right.2'), { tempo: 160, fluency: 3, day: 1 });
    expect(nextProbe(learner, programme, { day: START })!.item.way).toBe('right.2');
  });
});
