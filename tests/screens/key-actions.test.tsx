import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { blockFrom, pianoKeyName } from '../../src/parts/piano-keys';
import { prefer, readPreferences } from '../../src/preferences';
import { KeyLegend } from '../../src/screens/play/key-legend';
import { watchKeys } from '../../src/screens/play/key-actions';
import { learn, nothingLearnt } from '../../src/screens/settings/piano-keys';
import { midi } from '../../src/sound/midi-input';

const port = {
  name: 'Piano',
  state: 'connected',
  onmidimessage: null as ((event: unknown) => void) | null,
};
const access = Object.assign(new EventTarget(), { inputs: new Map([['a', port]]) });
const send = (...bytes: number[]) =>
  port.onmidimessage!({ data: Uint8Array.from(bytes), timeStamp: performance.now() });
const strike = (key: number) => send(0x90, key, 70);
const lift = (key: number) => send(0x80, key, 0);
const tap = (key: number) => {
  strike(key);
  lift(key);
};
const pedal = (value: number) => send(0xb0, 64, value);

const LEARNT = { levels: [21, 23, 24, 26, 28], forward: 108, back: 107 } as const;

beforeEach(async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] });
  Object.defineProperty(navigator, 'requestMIDIAccess', {
    configurable: true,
    value: async () => access,
  });
  await midi.connect();
  await prefer({ pianoKeys: { ...LEARNT, levels: [...LEARNT.levels] }, holdsPedal: true });
});
afterEach(async () => {
  cleanup();
  midi.disconnect();
  vi.useRealTimers();
  await prefer({ pianoKeys: nothingLearnt, holdsPedal: false });
});

/** Until a key acts alone, and a pedal is held. */
const wait = () => vi.advanceTimersByTime(1001);

function watch() {
  const asked: unknown[] = [];
  const unwatch = watchKeys((action) =>
    asked.push(action.kind === 'rate' ? action.fluency : action.kind),
  );
  return { asked, unwatch };
}

test('a key that was learnt does what it was learnt for, and nobody else’s', () => {
  const { asked, unwatch } = watch();
  for (const key of [21, 28, 108, 60, 107]) {
    wait();
    tap(key);
  }
  expect(asked).toEqual([0, 4, 'forward', 'back']);
  unwatch();
  wait();
  tap(21);
  expect(asked).toHaveLength(4);
});

test('who plays on does not rate: a key acts alone, and not soon after another', () => {
  const { asked } = watch();
  tap(21);
  wait();
  tap(60);
  tap(21);
  wait();
  strike(60);
  wait();
  strike(23);
  lift(23);
  lift(60);
  expect(asked).toEqual([]);
  wait();
  tap(23);
  expect(asked).toEqual([1]);
});

test('a pedal that is held goes on once; one that is touched, or held while one plays, does not', () => {
  const { asked } = watch();
  pedal(127);
  vi.advanceTimersByTime(900);
  pedal(0);
  wait();
  pedal(127);
  vi.advanceTimersByTime(500);
  tap(60);
  wait();
  pedal(0);
  strike(60);
  pedal(127);
  wait();
  lift(60);
  pedal(0);
  expect(asked).toEqual([]);
  pedal(127);
  wait();
  wait();
  expect(asked).toEqual(['forward']);
});

test('nothing acts that was not learnt', async () => {
  await prefer(readPreferences({}));
  const { asked } = watch();
  for (const key of [21, 108]) {
    wait();
    tap(key);
  }
  wait();
  pedal(127);
  wait();
  expect(asked).toEqual([]);
});

test('the keys are told where they act, while a keyboard is connected', () => {
  render(<KeyLegend actions={['rate', 'forward']} />);
  const text = document.body.textContent;
  expect(text).toContain('1 broke down 2 stopped 3 uneven 4 even 5 effortless › on');
  expect(text).toContain('pedal held down: on');
  expect(text).not.toContain('back');
  midi.disconnect();
  cleanup();
  render(<KeyLegend actions={['rate', 'forward']} />);
  expect(screen.queryByText(/On the piano/)).toBeNull();
});

test('five neighbours are white keys, and only where there are five', () => {
  expect(blockFrom(21)).toEqual([21, 23, 24, 26, 28]);
  expect(blockFrom(101)).toEqual([101, 103, 105, 107, 108]);
  expect(blockFrom(103)).toBeNull();
  expect(blockFrom(22)).toBeNull();
  expect([21, 22, 60, 66].map(pianoKeyName)).toEqual(['A0', 'B♭0', 'C4', 'F♯4']);
});

test('keys are learnt one by one or five at once, none for two things', () => {
  const none = { pianoKeys: nothingLearnt };
  const some = { pianoKeys: { ...nothingLearnt, forward: 24 } };
  expect(learn('levels', [21, 22], none)).toEqual({ kind: 'more' });
  expect(learn('levels', [21, 22, 21], none)).toMatchObject({ kind: 'refused' });
  expect(learn('levels', [21, 22, 30, 40, 50], some)).toEqual({
    kind: 'learnt',
    pianoKeys: { ...some.pianoKeys, levels: [21, 22, 30, 40, 50] },
  });
  expect(learn('block', [21], some)).toMatchObject({ kind: 'refused' });
  expect(learn('back', [24], some)).toMatchObject({ kind: 'refused' });
  // The same may be learnt anew.
  expect(learn('forward', [24], some)).toMatchObject({ kind: 'learnt' });
});

test('what is kept of learnt keys and cannot be is as if nothing had been learnt', () => {
  for (const pianoKeys of [
    null,
    { levels: [1, 2], forward: 3, back: 4 },
    { ...LEARNT, back: 200 },
  ]) {
    expect(readPreferences({ pianoKeys }).pianoKeys).toEqual(nothingLearnt);
  }
  expect(readPreferences({ pianoKeys: LEARNT }).pianoKeys).toEqual(LEARNT);
});
