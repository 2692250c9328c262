import { describe, expect, it } from 'vitest';
import { roundItems } from '../../../shared/music/deck';
import { engravingOf } from '../../../shared/music/engraving/engraving';
import { heightOf, pageOf, slotsAt, systemAt } from '../../../shared/music/engraving/page';
import { inPlace, placedNotes, turnsOf } from '../../../shared/music/engraving/placed';
import { breakerOf, MARGIN } from '../../../shared/music/engraving/systems';
import { PARTS_OF_BEAT } from '../../../shared/music/score';
import { scoreOf } from '../../../shared/music/score-of';
import { lasting, notes, OPTIONS, score } from './scores';

describe('turns', () => {
  it('are where the line goes the other way', () => {
    const placed = placedNotes(score(['d.major-53.right.2']), 'right');
    expect(turnsOf(placed)).toEqual([6 * 6]);
    const repeated = inPlace(notes('C4 C4 E4 E4 - C4 C4'));
    expect(turnsOf(repeated)).toEqual([12]);
  });
});

describe('systems', () => {
  const four = score(['d.dominant-7.together.4']);

  it('show everything once and break only at beats', () => {
    const rounds = scoreOf(roundItems('eb', 'together.2'), { ...OPTIONS, grouping: 3 });
    const stretches = breakerOf(rounds)(70);
    expect(stretches.length).toBeGreaterThan(4);
    expect(stretches.map(({ from }) => from % PARTS_OF_BEAT)).toEqual(stretches.map(() => 0));
    const places = engravingOf(rounds, stretches).flatMap(({ staves }) =>
      staves[0]!.notes.filter((note) => !note.isTiedBack).map(({ place }) => place),
    );
    expect(places).toEqual(placedNotes(rounds, 'right').map(({ place }) => place));
  });

  it('break where no note is held over, even while one hand rests', () => {
    const length = 6 * PARTS_OF_BEAT;
    const held = { ...four, right: lasting(12, length - 12), left: lasting(-length) };
    expect(breakerOf(held)(MARGIN + 1).map(({ from }) => from)).toEqual([0]);
    const free = { ...four, right: lasting(...Array<number>(24).fill(6)), left: lasting(-length) };
    expect(breakerOf(free)(MARGIN + 1).map(({ from }) => from)).toEqual([0, 96]);
  });

  it('break four octaves at the top, where the halves are nearly equal', () => {
    expect(breakerOf(four)(1000)).toHaveLength(1);
    expect(breakerOf(four)(90).map(({ from }) => from)).toEqual([0, 16 * 6]);
  });

  it('never break within a beat, however narrow the page', () => {
    expect(breakerOf(four)(MARGIN + 1).map(({ from }) => from)).toEqual(
      Array.from({ length: 9 }, (_, beat) => beat * PARTS_OF_BEAT),
    );
  });

  it('show a part of a score, and know whether it is the end', () => {
    const [part] = engravingOf(four, breakerOf(four, 24, 48)(1000));
    expect(part!.staves[0]!.notes.map(({ place }) => place)).toEqual([24, 30, 36, 42]);
    expect(part!.isEnd).toBe(false);
    expect(engravingOf(four, breakerOf(four)(1000))[0]!.isEnd).toBe(true);
    expect(breakerOf(four, 5000)(1000)).toEqual([]);
  });
});

describe('the page', () => {
  const four = score(['gb.dominant-7.together.4']);

  it('shows all as large as fits', () => {
    const wide = pageOf(four, { width: 1024, height: 600 });
    expect(wide.slots).toBe(wide.systems.length);
    expect(wide.space).toBeGreaterThanOrEqual(8);
    const heights = wide.systems.map((system) => heightOf(system) * wide.space);
    expect(heights.reduce((sum, height) => sum + height, 0)).toBeLessThanOrEqual(600);
    expect(pageOf(four, { width: 500, height: 600 }).space).toBeLessThan(wide.space);
  });

  it('shows only some systems of what is too long, and still at least one', () => {
    const round = scoreOf(roundItems('d', 'together.4'), OPTIONS);
    const page = pageOf(round, { width: 1024, height: 500 });
    expect(page.slots).toBe(2);
    expect(page.systems.length).toBeGreaterThan(5);
    expect(pageOf(round, { width: 1024, height: 60 }).slots).toBe(1);
    const { systems } = page;
    expect(
      [null, 0, systems[1]!.from, systems[1]!.from - 1, 1e6].map((at) => systemAt(systems, at)),
    ).toEqual([0, 0, 1, 0, systems.length - 1]);
  });

  it('shows in a round the arpeggio that runs and the next, as large as that allows', () => {
    const round = scoreOf(roundItems('d', 'together.2'), OPTIONS);
    const starts = [0, ...round.joins];
    for (const box of [
      { width: 980, height: 420 },
      { width: 350, height: 560 },
      { width: 1180, height: 560 },
    ]) {
      const { systems, slots, space } = pageOf(round, box);
      expect(space).toBeGreaterThanOrEqual(7);
      const systemsOf = (from: number, to: number) =>
        systems.flatMap((system, i) => (system.from < to && system.to > from ? [i] : []));
      starts.slice(0, -1).forEach((start, k) => {
        const next = systemsOf(starts[k + 1]!, starts[k + 1]! + 1)[0]!;
        for (const now of systemsOf(start, starts[k + 1]!)) {
          expect(slotsAt(now, slots, systems.length)).toContain(next);
        }
      });
    }
  });

  it('turns without moving what is still to be read', () => {
    const turning = [0, 1, 2, 3, 4].map((now) => slotsAt(now, 2, 5));
    expect(turning).toEqual([
      [0, 1],
      [2, 1],
      [2, 3],
      [4, 3],
      [4, 3],
    ]);
    expect(slotsAt(0, 3, 2)).toEqual([0, 1]);
    expect(slotsAt(1, 1, 2)).toEqual([1]);
  });
});
