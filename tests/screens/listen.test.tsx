import { cleanup, render, renderHook, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { expectedOf } from '../../shared/listening/expected';
import { itemOf, type ItemId } from '../../shared/music/deck';
import { scoreOf } from '../../shared/music/score-of';
import type { Session } from '../../src/day/session';
import { Notice } from '../../src/parts/notice/notice';
import { prefer } from '../../src/preferences';
import { courseOf } from '../../src/screens/play/course';
import { type Ear, useEar } from '../../src/screens/play/listen';
import { runsOf, toPlayAgain } from '../../src/screens/play/record-runs';
import { withTake } from '../../src/screens/play/with-take';
import { nothingLearnt } from '../../src/screens/settings/piano-keys';
import { midi } from '../../src/sound/midi-input';
import { OPTIONS } from '../formats/scores';
import { perform, type Planted, seededRandom } from '../listening/performer';

const ITEMS: readonly ItemId[] = ['e.major-53.right.2', 'e.minor-53.right.2'];
const { title: _, pedal: __, ...COURSE } = OPTIONS;
const course = courseOf(ITEMS, COURSE);

const session = (items = ITEMS): Session => ({
  day: '2026-11-25',
  entry: { key: 'e.right.2.1', kind: 'round', note: 'e', way: 'right.2', items },
  at: 0,
  phase: 'rating',
  tempo: 240,
  pedal: false,
  ratings: {},
});

const takeOf = (items: readonly ItemId[], planted: Planted, tempo = 240) =>
  perform(expectedOf(scoreOf(items.map(itemOf), { ...OPTIONS, pedal: false })), {
    random: seededRandom(2),
    tempo,
    spread: 0.003,
    planted,
  });

const access = Object.assign(new EventTarget(), { inputs: new Map() });
const port = {
  name: 'Piano',
  state: 'connected',
  onmidimessage: null as ((event: unknown) => void) | null,
};
const unplug = () => {
  port.state = 'disconnected';
  access.dispatchEvent(new Event('statechange'));
};
const play = (at: number, ...bytes: number[]) =>
  port.onmidimessage!({ data: Uint8Array.from(bytes), timeStamp: at });

/** The ear of a stand on which the music is not yet on, and what turns it on. */
function show(isOn: boolean) {
  const { result, rerender } = renderHook(
    (isMusicOn: boolean): Ear => useEar(course, COURSE, isMusicOn),
    { initialProps: isOn },
  );
  return { ear: result.current, beginMusic: () => rerender(true) };
}

beforeEach(async () => {
  port.state = 'connected';
  access.inputs.set('a', port);
  Object.defineProperty(navigator, 'requestMIDIAccess', {
    configurable: true,
    value: async () => access,
  });
  await midi.connect();
});
afterEach(() => {
  cleanup();
  midi.disconnect();
  vi.useRealTimers();
});

test('a take becomes measures and ratings of its items, from the place where the run began', () => {
  const take = takeOf(ITEMS.slice(1), { waits: [{ step: 6, seconds: 0.2 }] });
  const heard = withTake(session(), { take, course, options: COURSE, from: 1, to: 2 });
  expect(Object.keys(heard.takes!)).toEqual([ITEMS[1]]);
  expect(heard.ratings).toEqual({ [ITEMS[1]!]: { fluency: 2, tempo: null } });
  expect(runsOf(heard).map(({ fluency, take: kept }) => [fluency, kept?.right])).toEqual([
    [3, undefined],
    [2, 13],
  ]);
});

test('another tempo than the one that was set is told: of a single run as its tempo', () => {
  const options = { course, options: COURSE, from: 0 };
  const slow = takeOf(ITEMS, {}, 200);
  const round = withTake(session(), { ...options, take: slow, to: 2 });
  expect(ITEMS.map((id) => round.ratings[id]!.tempo)).toEqual([200, 200]);
  const single = takeOf(ITEMS.slice(0, 1), {}, 200);
  const one = withTake(session(ITEMS.slice(0, 1)), { ...options, take: single, to: 1 });
  expect(one.tempo).toBe(200);
});

test('nothing is said of a run in which nothing was heard; played again, what was heard is forgotten', () => {
  const options = { course, options: COURSE, from: 0, to: 2 };
  const silent = withTake(session(), { ...options, take: { ...takeOf(ITEMS, {}), notes: [] } });
  expect(silent).toEqual(session());
  const heard = withTake(session(), { ...options, take: takeOf(ITEMS, { until: 9 }) });
  expect(toPlayAgain(heard)).toEqual({ ...session(), phase: 'playing' });
});

test('what is tried during the count-in is no part of the run', () => {
  const { ear, beginMusic } = show(false);
  ear.begin(0, 240);
  const start = performance.now();
  for (const [i, key] of [64, 68, 71].entries()) {
    play(start - 3000 + 250 * i, 0x90, key, 60);
    play(start - 2800 + 250 * i, 0x80, key, 0);
  }
  beginMusic();
  for (const { midi: key, on, off, loudness } of takeOf(ITEMS, {}).notes) {
    play(start + 1000 * on, 0x90, key, loudness!);
    play(start + 1000 * off!, 0x80, key, 0);
  }
  const then = vi.fn<(heard: Session) => void>();
  ear.end(session(), 2, then);
  const { takes } = then.mock.calls[0]![0];
  expect(ITEMS.map((id) => takes![id]!.breaks)).toEqual([[], []]);
  expect(ITEMS.map((id) => takes![id]!.right)).toEqual([13, 13]);
});

/** Plays a take on the keyboard, its first note now. */
function playTake({ notes }: ReturnType<typeof takeOf>) {
  const start = performance.now() - 1000 * notes[0]!.on;
  for (const { midi: key, on, off, loudness } of notes) {
    play(start + 1000 * on, 0x90, key, loudness!);
    play(start + 1000 * off!, 0x80, key, 0);
  }
}

test('while a run goes on, its place is known, and what was played right is lit', () => {
  const { ear, beginMusic } = show(false);
  ear.begin(1, 240);
  playTake(takeOf(ITEMS.slice(1), { until: 3, wrong: [{ step: 2, hand: 'right', by: 1 }] }));
  expect(ear.live.step.value).toBeNull();
  beginMusic();
  // What came just before the first beat counts.
  expect(ear.live.step.value).toBe(15);
  expect([...ear.live.lit.value.right].toSorted((a, b) => a - b)).toEqual([12, 13, 15]);
  ear.live.turnTo(0);
  expect(ear.live.step.value).toBe(0);
  expect(ear.live.lit.value.right.size).toBe(0);
  playTake(takeOf(ITEMS, { until: 5 }));
  expect(ear.live.step.value).toBe(5);
  ear.end(session(), 2, () => undefined);
  expect(ear.live.step.value).toBeNull();
  expect(ear.live.lit.value.right.size).toBe(0);
});

test('of a round in which the keyboard is unplugged, what was finished before is judged, and that is said', async () => {
  render(<Notice />);
  const { ear, beginMusic } = show(false);
  ear.begin(0, 240);
  beginMusic();
  playTake(takeOf(ITEMS, { until: 15 }));
  unplug();
  await screen.findByText(/what follows is not heard/);
  const then = vi.fn<(heard: Session) => void>();
  ear.end(session(), 2, then);
  expect(Object.keys(then.mock.calls[0]![0].takes!)).toEqual([ITEMS[0]]);
  expect(then.mock.calls[0]![0].takes![ITEMS[0]!]).toMatchObject({ right: 13, faults: [] });
  await screen.findByText(/only the first chord was judged/);
});

test('keys that were learnt are no notes, unless they belong to the run', async () => {
  await prefer({ pianoKeys: { ...nothingLearnt, forward: 21, back: 64 } });
  const { ear } = show(true);
  ear.begin(0, 240);
  const take = takeOf(ITEMS.slice(0, 1), {});
  playTake(take);
  play(performance.now() + 5000, 0x90, 21, 60);
  const then = vi.fn<(heard: Session) => void>();
  ear.end(session(), 1, then);
  expect(then.mock.calls[0]![0].takes![ITEMS[0]!]).toMatchObject({ right: 13, faults: [] });
  await prefer({ pianoKeys: nothingLearnt });
});

test('a slower hand is waited for, a silent one is not', () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] });
  const { ear } = show(true);
  const done = vi.fn<() => void>();
  ear.begin(0, 240);
  ear.whenQuiet(done);
  expect(done).toHaveBeenCalledTimes(1);

  play(performance.now(), 0x90, 64, 60);
  ear.whenQuiet(done);
  vi.advanceTimersByTime(600);
  play(performance.now(), 0x90, 68, 60);
  vi.advanceTimersByTime(600);
  expect(done).toHaveBeenCalledTimes(1);
  vi.advanceTimersByTime(400);
  expect(done).toHaveBeenCalledTimes(2);
});
