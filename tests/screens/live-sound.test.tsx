/** Following a run by the microphone: what is handed to the worker, and what is believed of what it tells. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { ItemId } from '../../shared/music/deck';
import { courseOf } from '../../src/screens/play/course';
import { mayFollow } from '../../src/screens/play/hears-by';
import { createLive } from '../../src/screens/play/live';
import type { LiveAnswer, LiveMessage } from '../../src/sound/listen-live';
import { OPTIONS } from '../formats/scores';

const ITEMS: readonly ItemId[] = ['e.major-53.right.2', 'e.minor-53.right.2'];
const { title: _, pedal: __, ...COURSE } = OPTIONS;
const course = courseOf(ITEMS, COURSE);

class FakeWorker extends EventTarget {
  readonly told: LiveMessage[] = [];
  isOver = false;
  constructor() {
    super();
    made.worker = this;
  }
  postMessage(message: LiveMessage) {
    this.told.push(message);
  }
  terminate() {
    this.isOver = true;
  }
  answer(step: number, right: readonly number[], turns: number, spoilt: 'noise' | null = null) {
    const heard = { step, lit: { right: new Set(right), left: new Set<number>() }, spoilt };
    const data: LiveAnswer = { heard, turns };
    this.dispatchEvent(new MessageEvent('message', { data }));
  }
  /** The first sample of each piece of sound, by which it is known. */
  heard = () =>
    this.told.flatMap((message) => (message.kind === 'sound' ? [message.samples[0]!] : []));
}
const made: { worker: FakeWorker } = { worker: null! };
let bring: (first: number) => void;
const listen = (listener: (samples: Float32Array) => void) => {
  bring = (first) => listener(Float32Array.of(first, 0));
};

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('Worker', FakeWorker);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

function begun(from = 0) {
  const live = createLive();
  const context = { sampleRate: 48_000 } as AudioContext;
  const options = { course, options: COURSE, from, tempo: 240 };
  live.begin({ kind: 'microphone', capture: { listen, context } }, options);
  return live;
}

test('of what comes before the music is on only the last moment is handed on', () => {
  const live = begun();
  for (const [i, wait] of [2000, 500, 300].entries()) {
    bring(i + 1);
    vi.advanceTimersByTime(wait);
  }
  expect(made.worker.heard()).toEqual([]);
  live.start(performance.now() - 400);
  bring(4);
  expect(made.worker.heard()).toEqual([3, 4]);
  expect(made.worker.told[0]).toMatchObject({
    kind: 'begin',
    options: { rate: 48_000, tempo: 240 },
  });
});

test('the place and the lights are those that the worker tells, until the end', () => {
  const live = begun();
  made.worker.answer(3, [0, 1, 2], 0);
  expect(live.step.value).toBe(3);
  expect([...live.lit.value.right]).toEqual([0, 1, 2]);
  made.worker.answer(5, [], 0, 'noise');
  expect([live.step.value, live.spoilt.value]).toEqual([5, 'noise']);
  live.end();
  expect([live.step.value, live.spoilt.value, made.worker.isOver]).toEqual([null, null, true]);
});

test('what it heard before it knew of a turn does not turn the page back', () => {
  const live = begun();
  made.worker.answer(11, [10], 0);
  live.turnTo(0);
  made.worker.answer(12, [10, 11], 0);
  expect(live.step.value).toBe(11);
  made.worker.answer(0, [], 1);
  expect(live.step.value).toBe(0);
  expect(made.worker.told.at(-1)).toEqual({ kind: 'turn', start: 0 });
});

test('a run that begins later is begun there', () => {
  begun(1);
  expect(made.worker.told.at(-1)).toEqual({ kind: 'turn', start: 12 });
});

test('the page can turn with the player by any ear, but not against a beat that sounds on', () => {
  const may = (['midi', 'microphone', null] as const).map((by) =>
    (['heard', 'seen', 'off'] as const).map((beat) => mayFollow(by, beat)),
  );
  expect(may).toEqual([
    [false, true, true],
    [true, true, true],
    [false, false, false],
  ]);
});
