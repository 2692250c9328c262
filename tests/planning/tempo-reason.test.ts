import { describe, expect, it } from 'vitest';
import { itemOf, roundItems } from '../../shared/music/deck';
import { chanceEven, reachOf, workingTempo } from '../../shared/learning/prediction';
import { replay } from '../../shared/planning/student';
import { oftenText, tempoReason } from '../../shared/planning/tempo-reason';
import { programme, run, START } from '../learning/events';

const BEGIN = programme();
const ITEM = itemOf('d.major-6.right.2');
const { learner } = replay([BEGIN, ...[0, 1, 2, 3].map((day) => run(ITEM.id, 3, 240, day))]);
const at = { day: START, grouping: 4 } as const;

describe('what is expected of a tempo', () => {
  it('is eight in ten at the tempo of the list, and half at the reach', () => {
    const tempo = workingTempo(learner, ITEM, START);
    expect(chanceEven(learner, ITEM, tempo, START)).toBeCloseTo(0.8, 2);
    const reach = reachOf(learner, ITEM, START);
    const [mark, middle, low, high] = [tempo, reach.tempo, reach.low, reach.high].map((one) =>
      Math.round(one / 4),
    );
    expect(tempoReason(learner, [ITEM], { tempo, ...at })).toBe(
      `At ${mark} even eight times in ten; half of the time at ${middle} (${low} to ${high}).`,
    );
    expect(tempoReason(learner, [ITEM], { tempo: reach.tempo, ...at })).toContain(
      `At ${middle} even half of the time`,
    );
  });

  it('follows the tempo that is set, in marks of the grouping', () => {
    expect(tempoReason(learner, [ITEM], { tempo: 60, ...at })).toMatch(
      /^At 15 even nearly always;/,
    );
    expect(tempoReason(learner, [ITEM], { tempo: 600, day: START, grouping: 3 })).toMatch(
      /^At 200 even hardly ever;/,
    );
  });

  it('is that of the middle of a round', () => {
    const items = roundItems('d', 'right.2');
    const chances = items.map((item) => chanceEven(learner, item, 200, START));
    const mean = chances.reduce((sum, chance) => sum + chance, 0) / 11;
    expect(tempoReason(learner, items, { tempo: 200, ...at })).toContain(
      `even ${oftenText(mean)};`,
    );
  });
});
