import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../shared/log/day';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { type Item, STAGES } from '../../shared/music/deck';
import { type Learner, newLearner } from '../../shared/learning/learner';
import { observe } from '../../shared/learning/observe';
import { reachOf } from '../../shared/learning/prediction';
import { deckOf } from '../../shared/learning/readiness';
import { nextProbe, placedStage, PROBES } from '../../shared/planning/placement';
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
  for (let i = 0; i < probes; i++) {
    const { item, tempo } = nextProbe(learner, DEFAULT_PROGRAMME, START);
    items.push(item);
    const over = Math.log2(canPlay(item) / tempo);
    const fluency = over > 0.45 ? 4 : over > 0 ? 3 : over > -0.4 ? 2 : over > -0.8 ? 1 : 0;
    observe(learner, item, { tempo, fluency, day: dayNumber(START) });
  }
  return { learner, items };
}

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
    const { tempo } = nextProbe(newLearner(), { ...DEFAULT_PROGRAMME, grouping: 3 }, START);
    expect(tempo % 3).toBe(0);
  });
});
