import { describe, expect, test } from 'vitest';
import type { LogEvent, RunBody } from '../../../shared/log/events';
import { itemOf } from '../../../shared/music/deck';
import { placeInDrill } from '../../../shared/planning/drills/late-note';
import { addDays } from '../../../shared/log/day';
import { isPlayed, offerDrills } from '../../../shared/planning/drills/offer';
import { replay } from '../../../shared/planning/student';
import { event, programme, run, START } from '../../learning/events';
import { takeWith } from '../../learning/takes';

const on = (day: number): string => addDays(START, day);
const idsOn = (day: number, minutes: number, events: readonly LogEvent[]) =>
  offerDrills(replay(events), on(day), minutes).map(({ drill }) => drill);
const set = programme({ reached: 'left.2' });
const drilled = (drill: string, day: number) => event({ kind: 'drill', drill }, day);

describe('what the ratings point at', () => {
  test.each([
    [0, 'd.major-6.right.chords'],
    [1, 'd.major-6.right.join'],
    [2, 'd.major-6.right.long-short'],
  ] as const)('fluency %i', (fluency, drill) => {
    expect(idsOn(1, 20, [set, run('d.major-6.right.2', fluency, 200)])).toEqual([drill]);
  });

  test('an even run asks for none', () => {
    expect(idsOn(1, 60, [set, run('d.major-6.right.2', 3, 200)])).toEqual([]);
  });

  test('DRILL: the worst first, then the latest, and no two from one note', () => {
    const events = [
      set,
      run('e.major-6.right.2', 1, 200, 0),
      run('d.major-6.right.2', 0, 200, 1),
      run('d.minor-6.right.2', 0, 200, 0),
      run('g.major-6.right.2', 1, 200, 1),
    ];
    expect(idsOn(2, 30, events)).toEqual(['d.major-6.right.chords', 'g.major-6.right.join']);
    expect(idsOn(2, 12, events)).toEqual(['d.major-6.right.chords']);
    expect(idsOn(2, 5, events)).toEqual([]);
  });

  test('a rating of long ago, a note out of the programme and an item set aside ask for none', () => {
    const bad = run('d.major-6.right.2', 1, 200);
    expect(idsOn(11, 20, [set, bad])).toEqual([]);
    expect(idsOn(1, 20, [programme({ notes: ['c'], reached: 'left.2' }), bad])).toEqual([]);
    const aside = event({ kind: 'aside', item: 'd.major-6.right.2', aside: true });
    expect(idsOn(1, 20, [set, bad, aside])).toEqual([]);
  });

  test('of both hands the one that lags', () => {
    const events = [
      programme({ reached: 'together.2' }),
      run('d.major-6.right.2', 4, 400, 0),
      run('d.major-6.left.2', 1, 100, 0),
      run('d.major-6.left.2', 3, 60, 0),
      run('d.major-6.together.2', 1, 100, 1),
    ];
    expect(idsOn(2, 20, events)).toEqual(['d.major-6.left.join']);
  });
});

test('another drill each time one has been played', () => {
  const bad = [set, run('d.major-6.right.2', 1, 200)];
  const one = [...bad, drilled('d.major-6.right.join', 1)];
  expect(idsOn(2, 20, one)).toEqual(['d.major-6.right.out-and-back']);
  const two = [...one, drilled('d.major-6.right.out-and-back', 2)];
  expect(idsOn(3, 20, two)).toEqual(['d.major-6.right.groups']);
});

test('a drill is played on its day, and not on the next', () => {
  const student = replay([set, drilled('d.major-6.right.join', 1)]);
  expect(isPlayed(student, 'd.major-6.right.join', on(1))).toBe(true);
  expect(isPlayed(student, 'd.major-6.right.join', on(2))).toBe(false);
  expect(isPlayed(student, 'd.major-6.right.groups', on(1))).toBe(false);
});

const steady = Array.from({ length: 13 }, (_, i) => (i === 0 ? null : 4));
const heard = (item: RunBody['item'], waits: readonly (number | null)[]): LogEvent => {
  const measures = { unevenness: 9, overlap: 3, thumbLate: null, loudness: 4, thumbAccent: null };
  const take = takeWith({ right: { waits, ...measures }, left: null });
  const body = { kind: 'run', item, tempo: 200, fluency: 2, pedal: false, take } as const;
  return event({ ...body, judge: 'player', entry: null });
};

const at = (step: number) => steady.map((wait, i) => (i === step ? 140 : wait));

describe('what was heard points at the note that was late', () => {
  test('with a drill for its join', () => {
    const events = [set, heard('d.major-6.right.2', at(3))];
    expect(idsOn(1, 20, events)).toEqual(['d.major-6.right.join.3']);
  });

  test('and not where nothing clearly waited', () => {
    const events = [set, heard('d.major-6.right.2', steady)];
    expect(idsOn(1, 20, events)).toEqual(['d.major-6.right.long-short']);
  });

  test('nor once a later run was not heard', () => {
    const events = [set, heard('d.major-6.right.2', at(3)), run('d.major-6.right.2', 2, 200)];
    expect(idsOn(1, 20, events)).toEqual(['d.major-6.right.long-short']);
  });

  test.each([
    ['d.major-6.right.2', 3, 3],
    ['d.major-6.right.2', 9, 9],
    ['d.major-6.right.4', 3, 3],
    ['d.major-6.right.4', 9, 3],
    ['d.major-6.right.4', 15, 9],
    ['d.major-6.right.4', 21, 9],
    ['d.dominant-7.left.4', 12, 4],
    ['d.dominant-7.left.4', 20, 12],
    ['d.major-6.together.contrary', 5, null],
  ] as const)('%s, note %i is note %s of the drill', (id, step, place) => {
    expect(placeInDrill(itemOf(id), step)).toBe(place);
  });
});
