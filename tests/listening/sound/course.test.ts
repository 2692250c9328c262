/** How a run goes that is not one even pass: stops, breaking off, beginning again, another tempo, a round. */
import { beforeAll, expect, test } from 'vitest';
import { type Expected, expectedOf } from '../../../shared/listening/expected';
import { judge } from '../../../shared/listening/judge';
import { hear } from '../../../shared/listening/sound/hear';
import type { Sound } from '../../../shared/listening/sound/spectrum';
import type { RunTake } from '../../../shared/log/run-take';
import { type ItemId, itemOf } from '../../../shared/music/deck';
import { scoreOf } from '../../../shared/music/score-of';
import { OPTIONS } from '../../formats/scores';
import { perform, type Planted, seededRandom } from '../performer';
import { rendered } from './fluidsynth';
import { PLACES, spoiled } from './spoil';

interface Course {
  readonly items: readonly ItemId[];
  /** Notes a minute, as set and as played. */
  readonly set: number;
  readonly tempo: number;
  readonly planted: Planted;
}

const LEFT: readonly ItemId[] = ['d.dominant-42.left.4'];
const COURSES = {
  stop: { items: LEFT, set: 320, tempo: 320, planted: { waits: [{ step: 12, seconds: 3 }] } },
  end: { items: LEFT, set: 320, tempo: 320, planted: { until: 14 } },
  again: {
    items: LEFT,
    set: 320,
    tempo: 320,
    planted: { restarts: [{ at: 14, from: 0, pause: 1 }] },
  },
  slower: { items: ['c.major-53.right.2'], set: 240, tempo: 180, planted: {} },
  faster: { items: ['c.major-53.right.2'], set: 240, tempo: 400, planted: {} },
  round: {
    items: ['e.major-53.right.2', 'e.minor-53.right.2', 'e.major-6.right.2'],
    set: 240,
    tempo: 240,
    planted: { missed: [{ step: 15, hand: 'right' }] },
  },
} as const satisfies Readonly<Record<string, Course>>;

type Name = keyof typeof COURSES;
const NAMES = Object.keys(COURSES) as Name[];

const expectedIn = ({ items }: Course): Expected =>
  expectedOf(scoreOf(items.map(itemOf), { ...OPTIONS, pedal: false }));

let sounds: readonly Sound[];
beforeAll(() => {
  const takes = NAMES.map((name, i) => {
    const { tempo, planted } = COURSES[name];
    return perform(expectedIn(COURSES[name]), {
      random: seededRandom(i + 1),
      tempo,
      spread: 0.006,
      planted,
    });
  });
  sounds = rendered(takes).map((sound, i) => spoiled(sound, PLACES.room, seededRandom(i)));
}, 120_000);

function heard(name: Name): readonly RunTake[] {
  const expected = expectedIn(COURSES[name]);
  const options = { tempo: COURSES[name].set, tuning: null, isFiltered: false };
  const { take, isFollowed } = hear(sounds[NAMES.indexOf(name)]!, expected, options);
  expect(isFollowed).toBe(true);
  return judge(expected, take).map((one) => one!);
}

test('a stop of three seconds is a wait at its note, and no fault', () => {
  const [take] = heard('stop');
  expect(take).toMatchObject({ right: 33, faults: [], breaks: [] });
  expect(Math.abs(take!.hands.left!.waits[12]! - 3000)).toBeLessThan(50);
});

test('who breaks off is heard up to there', () => {
  expect(heard('end')[0]).toMatchObject({ right: 15, faults: [], breaks: [14] });
});

test('who begins again from the start is judged by the second playing', () => {
  expect(heard('again')[0]).toMatchObject({ right: 33, faults: [] });
});

test.each(['slower', 'faster'] as const)(
  'who plays %s than was set is heard at that tempo',
  (name) => {
    const [take] = heard(name);
    expect(take).toMatchObject({ right: 13, faults: [] });
    expect(Math.abs(take!.tempo! / COURSES[name].tempo - 1)).toBeLessThan(0.01);
  },
);

test('the arpeggios of a round are told apart', () => {
  const takes = heard('round');
  expect(takes.map(({ right }) => right)).toEqual([13, 12, 13]);
  expect(takes.map(({ faults }) => faults.map(({ kind, step }) => [kind, step]))).toEqual([
    [],
    [['missed', 3]],
    [],
  ]);
});
