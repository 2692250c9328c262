import { describe, expect, it } from 'vitest';
import type { LogEvent } from '../../shared/log/events';
import { itemOf, type ItemId, roundItems } from '../../shared/music/deck';
import { replay, type Student } from '../../shared/planning/student';
import { programme, run } from '../learning/events';

const D: ItemId = 'd.major-6.right.2';
const D_LEFT: ItemId = 'd.major-6.left.2';
const openOf = (student: Student, item: ItemId = D): number =>
  student.stages.open[itemOf(item).arpeggioIndex]!;
const BEGIN = programme();
const after = (...events: readonly LogEvent[]): number => openOf(replay([BEGIN, ...events]));

/** So many chords of a round that hold on two days. */
const hold = (count: number) =>
  roundItems('d', 'right.2')
    .slice(0, count)
    .flatMap(({ id }) => [run(id, 3, 160), run(id, 4, 160, 1)]);

describe('stages', () => {
  it('are open up to the one that the programme says is reached', () => {
    expect(openOf(replay([programme()]))).toBe(0);
    expect(openOf(replay([programme({ reached: 'together.2' })]))).toBe(2);
  });

  it('open when the one below was even on two separate days', () => {
    expect(after(run(D, 3, 160), run(D, 3, 160), run(D, 4, 160))).toBe(0);
    expect(after(run(D, 3, 160), run(D, 4, 160, 1))).toBe(1);
  });

  it('open arpeggio by arpeggio', () => {
    const student = replay([BEGIN, run(D, 3, 160), run(D, 4, 160, 1)]);
    expect(openOf(student, 'e.major-6.right.2')).toBe(0);
  });

  it('STAGE: open for the whole note once most of its chords hold', () => {
    const last: ItemId = 'd.diminished-7.right.2';
    expect(openOf(replay([BEGIN, ...hold(5)]), last)).toBe(0);
    expect(openOf(replay([BEGIN, ...hold(6)]), last)).toBe(1);
    expect(openOf(replay([BEGIN, ...hold(6)]), 'e.diminished-7.right.2')).toBe(0);
  });

  it('do not open on even runs slower than half the target', () => {
    expect(after(run(D, 3, 100), run(D, 3, 100, 1), run(D, 3, 100, 2))).toBe(0);
  });

  it('open at once by an even run on a stage that was not open', () => {
    expect(after(run('d.major-6.together.2', 3, 130))).toBe(2);
    expect(after(run('d.major-6.together.2', 2, 130))).toBe(0);
  });

  it('never open beyond what the programme asks for', () => {
    expect(after(run('d.major-6.together.contrary', 4, 200))).toBe(3);
  });

  it('STAGE: close when they do not hold, and then need two separate days again', () => {
    const opened = [run(D, 3, 130), run(D, 3, 130, 1)];
    const failed = [2, 3, 4, 5, 6].map((day) => run(D_LEFT, 0, 60, day));
    expect(after(...opened, ...failed)).toBe(0);
    expect(after(...opened, ...failed, run(D, 3, 130, 7))).toBe(0);
    expect(after(...opened, ...failed, run(D, 4, 130, 7), run(D, 4, 130, 8))).toBe(1);
  });

  it('STAGE: do not close on one bad run', () => {
    expect(after(run(D, 3, 130), run(D, 3, 130, 1), run(D_LEFT, 0, 130, 2))).toBe(1);
  });

  it('stay as they are when a new programme does not change the stage reached', () => {
    const opened = [programme(), run(D, 3, 160), run(D, 4, 160, 1)];
    expect(openOf(replay([...opened, programme({ minutes: 45 })]))).toBe(1);
    expect(openOf(replay([...opened, programme({ reached: 'together.4' })]))).toBe(3);
  });

  it('leave items off the path alone', () => {
    const off = roundItems('d', 'right.4').map((item) => run(item.id, 4, 300));
    expect(after(...off)).toBe(0);
  });
});
