import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../shared/log/day';
import { newLearner } from '../../shared/learning/learner';
import { observe } from '../../shared/learning/observe';
import { roundItems, type StartingNote, type Way } from '../../shared/music/deck';
import { isTwinOfToday, mayFollow, type Placed } from '../../shared/planning/order';
import { START } from '../learning/events';

const placed = (note: StartingNote, way: Way): Placed => ({
  note,
  way,
  items: roundItems(note, way),
});

const learner = newLearner();

describe('the order of entries', () => {
  it('TWIN: keeps neighbouring notes apart after a fresh round in the same way', () => {
    const fresh = [placed('c', 'right.2')];
    const may = (note: StartingNote, way: Way = 'right.2') =>
      mayFollow(learner, fresh, placed(note, way));
    expect(['db', 'd', 'b', 'bb'].map((note) => may(note as StartingNote))).toEqual([
      false,
      false,
      false,
      false,
    ]);
    expect(may('eb')).toBe(true);
    expect(may('g')).toBe(true);
    expect(may('d', 'left.2')).toBe(true);
  });

  it('TWIN: lets them follow when the round is no longer fresh', () => {
    const practised = newLearner();
    for (const item of roundItems('c', 'right.2')) {
      for (const day of [0, 1, 2, 3]) {
        observe(practised, item, { tempo: 160, fluency: 3, day: dayNumber(START) + day });
      }
    }
    expect(mayFollow(practised, [placed('c', 'right.2')], placed('d', 'right.2'))).toBe(true);
  });

  it('TWIN: in a second sitting what was fresh has its turn again, and its near twins do not', () => {
    const morning = newLearner();
    const today = dayNumber(START);
    for (const item of roundItems('c', 'right.2')) {
      observe(morning, item, { tempo: 160, fluency: 3, day: today });
    }
    const isTwin = (note: StartingNote, way: Way = 'right.2', day = today) =>
      isTwinOfToday(morning, day, placed(note, way));
    expect(isTwin('d')).toBe(true);
    expect(isTwin('c')).toBe(false);
    expect(isTwin('e')).toBe(false);
    expect(isTwin('d', 'left.2')).toBe(false);
    expect(isTwin('d', 'right.2', today + 1)).toBe(false);
  });

  it('HANDS: after two entries of one hand comes the other, or both', () => {
    const right = [placed('c', 'right.2'), placed('f', 'right.4')];
    expect(mayFollow(learner, right, placed('a', 'right.2'))).toBe(false);
    expect(mayFollow(learner, right, placed('a', 'left.2'))).toBe(true);
    expect(mayFollow(learner, right, placed('a', 'together.2'))).toBe(true);
    expect(mayFollow(learner, right.slice(1), placed('a', 'right.2'))).toBe(true);
    const both = [placed('c', 'together.2'), placed('f', 'together.2')];
    expect(mayFollow(learner, both, placed('a', 'together.2'))).toBe(true);
  });
});
