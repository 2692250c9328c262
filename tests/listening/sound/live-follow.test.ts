/** The way through the steps while it is played, by rises that are made up: each note rises for a moment, and keys ring. */
import { expect, test } from 'vitest';
import { expectedOf } from '../../../shared/listening/expected';
import { LiveFollow } from '../../../shared/listening/sound/live-follow';
import { heldIn, recentOf } from '../../../shared/listening/sound/recent';
import { roundItems } from '../../../shared/music/deck';
import { scoreOf } from '../../../shared/music/score-of';
import { OPTIONS } from '../../formats/scores';
import { seededRandom } from '../performer';

const HOP = 0.0175;
/** Moments from note to note, and as set. */
const INTERVAL = 12;
const SET = 15;
const CHORDS = roundItems('e', 'right.2').slice(0, 2);
const expected = expectedOf(scoreOf(CHORDS, { ...OPTIONS, pedal: false }));
const keyAt = (step: number): number => expected.steps[step]![0]!.key.midi;
const STEPS = expected.steps.map((_, step) => step);

/** One note: the step whose key is played, null for a key that no step has, and the moments until the next. */
type Note = readonly [step: number | null, moments?: number];

/** Plays on; what is told after each note. */
function play(follow: LiveFollow, notes: readonly Note[], seed = 1): readonly number[] {
  const random = seededRandom(seed);
  return notes.map(([played, moments = INTERVAL]) => {
    const key = played === null ? null : keyAt(played);
    for (let moment = 0; moment < moments; moment++) {
      follow.add((step) => {
        const noise = 0.15 * random();
        if (moment > 1 || key === null) return noise;
        const off = Math.abs(keyAt(step) - key);
        // An octave shares many partials.
        return off === 0 ? 0.9 : off === 12 ? 0.5 : noise;
      });
    }
    return follow.path().at(-1)?.step ?? -1;
  });
}

const begun = (): LiveFollow => {
  const follow = new LiveFollow(expected, { interval: SET, hop: HOP });
  play(follow, [[null, 40]]);
  return follow;
};
const each = (steps: readonly number[]): readonly Note[] => steps.map((step): Note => [step]);

test('nobody begins in noise, and then every step is told as it is played', () => {
  const follow = begun();
  expect(follow.path()).toEqual([]);
  expect(play(follow, each(STEPS))).toEqual(STEPS);
  expect(follow.path().map(({ step }) => step)).toEqual(STEPS);
  expect(follow.interval()).toBe(INTERVAL);
});

test('a note that is missing or wrong, a hesitation and a stop do not lead astray', () => {
  const follow = begun();
  const notes = STEPS.map((step): Note => {
    if (step === 5 || step === 17) return [null];
    return [step, step === 8 ? 2 * INTERVAL : step === 13 ? 10 * INTERVAL : INTERVAL];
  });
  const told = play(follow, notes);
  expect(told.filter((place, step) => place !== step)).toEqual([4, 16]);
  expect(follow.path().map(({ step }) => step)).toEqual(STEPS);
});

test('who begins an arpeggio again is found there after a few notes, and goes on to the next', () => {
  const follow = begun();
  play(follow, each(STEPS.slice(0, 9)));
  const told = play(follow, each(STEPS));
  expect(told.slice(4)).toEqual(STEPS.slice(4));
  // The way there is known from the first note that was played again.
  const again = follow.path().map(({ step }) => step);
  expect(again.slice(again.lastIndexOf(0))).toEqual(STEPS);
});

test('who was turned by hand is waited for there, but not called back from what has begun', () => {
  const follow = begun();
  play(follow, each(STEPS.slice(0, 5)));
  expect(follow.turnTo(12)).toBe(true);
  expect(play(follow, each([12, 13, 14]))).toEqual([12, 13, 14]);
  expect(follow.turnTo(12)).toBe(false);
  expect(play(follow, each([15, 16]))).toEqual([15, 16]);
});

test('the sound that is held is always the last of what came in', () => {
  const recent = recentOf(10, 2);
  for (let i = 0; i < 33; i++) recent.add(Float32Array.of(3 * i, 3 * i + 1, 3 * i + 2));
  expect([recent.end(), recent.end() - recent.first() >= 20]).toEqual([99, true]);
  expect([...heldIn(recent, 9)]).toEqual([90, 91, 92, 93, 94, 95, 96, 97, 98]);
  expect(heldIn(recent, 0)[0]).toBe(recent.first());
});
