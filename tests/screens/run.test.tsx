import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { roundItems } from '../../shared/music/deck';
import { courseOf } from '../../src/screens/play/course';
import { type Beating, type RunOptions, startRun } from '../../src/screens/play/run';
import type { MetronomeOptions } from '../../src/sound/metronome';

const course = courseOf(
  roundItems('d', 'right.2')
    .slice(0, 2)
    .map((item) => item.id),
  { tempo: 240, grouping: 4, fingeringOf: () => null },
);

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['performance', 'requestAnimationFrame', 'cancelAnimationFrame'] });
});
afterEach(() => vi.useRealTimers());

/** A run of two arpeggios of 12 steps each at 60 beats of four notes; `beat` lets the metronome's next beat come. */
function runWith(
  beating: Beating,
  from = 0,
  hasSound = true,
  follows: RunOptions['follows'] = null,
) {
  const told = { parts: [] as number[], over: 0, silent: 0, stops: 0 };
  const turns: number[] = [];
  const started: MetronomeOptions[] = [];
  let index = -5;
  const run = startRun(
    {
      course,
      tempo: 240,
      grouping: 4,
      beating,
      isCountInOnly: false,
      volume: 1,
      latencyOffsetMs: 0,
      follows,
      onTurn: (start) => turns.push(start),
      startMetronome: (options) => {
        started.push(options);
        if (options.sound && !hasSound) return Promise.reject(new Error('no sound output'));
        return Promise.resolve({
          state: signal('running'),
          resume: () => Promise.resolve(),
          stop: () => (told.stops += 1),
        });
      },
      onPart: (part) => told.parts.push(part),
      onOver: () => (told.over += 1),
      onSilent: () => (told.silent += 1),
    },
    from,
  );
  const beat = (count = 1) => {
    for (let i = 0; i < count; i++) {
      if (index > -5) vi.advanceTimersByTime(1000);
      index += 1;
      started.at(-1)!.onBeat({ index, at: performance.now(), isAccent: false });
    }
  };
  return { run, told, turns, started, beat };
}

test('counts in, walks with the beat, turns by itself, and is over a beat after the last note', async () => {
  const { run, told, beat } = runWith('heard');
  await Promise.resolve();
  expect(run.count.value).toBe(0);
  beat();
  expect(run.count.value).toBe(1);
  beat(4);
  expect([run.count.value, run.position.value]).toEqual([null, 0]);
  beat(2);
  expect([run.position.value, run.beatPosition.value, run.part.value]).toEqual([8, 8, 0]);
  beat();
  expect([run.position.value, run.part.value]).toEqual([12, 1]);
  beat(3);
  expect([run.position.value, told.over]).toEqual([24, 0]);
  beat();
  expect(told).toEqual({ parts: [0, 1], over: 1, silent: 0, stops: 1 });
});

test('going on is not heard while beats are counted in, and finds the beat again afterwards', async () => {
  const { run, told, beat } = runWith('seen');
  await Promise.resolve();
  run.next();
  beat(2);
  run.next();
  expect(run.part.value).toBe(0);
  beat(4);
  run.next();
  expect([run.part.value, run.position.value]).toEqual([1, 12]);
  run.next();
  expect(told.over).toBe(1);
});

test('going back takes the arpeggio again after a new count-in', async () => {
  const { run, beat } = runWith('heard');
  await Promise.resolve();
  beat(10);
  expect([run.part.value, run.position.value]).toEqual([1, 20]);
  run.back();
  expect([run.part.value, run.position.value]).toEqual([1, 12]);
  beat();
  expect(run.count.value).toBe(1);
  run.back();
  expect(run.part.value).toBe(0);
});

test('without a beat the player turns by hand, both ways', () => {
  const { run, told, started } = runWith('off');
  expect(started).toHaveLength(0);
  run.next();
  expect(run.part.value).toBe(1);
  run.back();
  expect(run.part.value).toBe(0);
  run.next();
  run.next();
  expect(told).toMatchObject({ parts: [0, 1, 0, 1], over: 1 });
});

test('follows the player, turns and goes back with the playing, and is over some beats after the last note', () => {
  vi.useFakeTimers();
  const place = signal<number | null>(null);
  const { run, told } = runWith('off', 0, true, place);
  expect(run.position.value).toBe(0);
  place.value = 11;
  expect([run.position.value, run.calmPosition.value, run.part.value]).toEqual([11, 8, 0]);
  place.value = 14;
  expect([run.calmPosition.value, run.part.value]).toEqual([12, 1]);
  place.value = 2;
  expect(run.part.value).toBe(0);
  place.value = 24;
  vi.advanceTimersByTime(1500);
  place.value = 12;
  vi.advanceTimersByTime(5000);
  expect(told.over).toBe(0);
  place.value = 24;
  vi.advanceTimersByTime(2100);
  expect(told).toMatchObject({ parts: [0, 1, 0, 1], over: 1 });
});

test('is over some beats after the last note was due where the player does not play it', () => {
  vi.useFakeTimers();
  const place = signal<number | null>(null);
  const { told } = runWith('off', 0, true, place);
  for (let step = 0; step < 24; step++) {
    vi.advanceTimersByTime(250);
    place.value = step;
  }
  vi.advanceTimersByTime(4000);
  expect(told.over).toBe(0);
  vi.advanceTimersByTime(500);
  expect(told.over).toBe(1);
});

test('who is followed past a seen beat is not turned by it, and the beat begins again with each arpeggio', async () => {
  const place = signal<number | null>(null);
  const { run, beat } = runWith('seen', 0, true, place);
  await Promise.resolve();
  beat(5);
  expect([run.count.value, run.position.value]).toEqual([null, 0]);
  beat(2);
  expect([run.position.value, run.beatPosition.value]).toEqual([0, 8]);
  beat(1);
  expect(run.beatPosition.value).toBe(0);
  place.value = 13;
  expect([run.part.value, run.beatPosition.value]).toEqual([1, 12]);
  beat(1);
  expect([run.position.value, run.beatPosition.value]).toEqual([13, 16]);
});

test('tells when the page is turned by hand', () => {
  const { run, turns } = runWith('off');
  run.next();
  run.back();
  expect(turns).toEqual([12, 0]);
});

test('takes up a round in the middle', () => {
  const { run } = runWith('off', 1);
  expect([run.part.value, run.position.value]).toEqual([1, 12]);
});

test('where there is no sound the beat is shown all the same', async () => {
  const { told, started } = runWith('heard', 0, false);
  await vi.waitFor(() => expect(started.map((options) => options.sound)).toEqual([true, false]));
  expect(told.silent).toBe(1);
});

test('a run that was stopped says no more', async () => {
  const { run, told, beat } = runWith('seen');
  await Promise.resolve();
  beat(6);
  run.stop();
  run.next();
  beat(20);
  expect(told).toMatchObject({ over: 0, stops: 1 });
});
