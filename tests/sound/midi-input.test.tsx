import { expect, test } from 'vitest';
import { isPedalled } from '../../shared/listening/take';
import { createMidiInput } from '../../src/sound/midi-input';

interface FakePort {
  name: string;
  state: 'connected' | 'disconnected';
  onmidimessage: ((event: unknown) => void) | null;
}

/** A browser with MIDI, and its keyboard. */
function fakeBrowser(permission: PermissionState, failure?: DOMException) {
  const port: FakePort = { name: 'Piano', state: 'connected', onmidimessage: null };
  const access = Object.assign(new EventTarget(), { inputs: new Map([['a', port]]) });
  const asked: unknown[] = [];
  const browser = {
    requestMIDIAccess: async (options: unknown) => {
      asked.push(options);
      if (failure) throw failure;
      return access as unknown as MIDIAccess;
    },
    permissions: { query: async () => ({ state: permission }) } as unknown as Permissions,
  };
  const play = (at: number, ...bytes: number[]) =>
    port.onmidimessage?.({ data: Uint8Array.from(bytes), timeStamp: at });
  const plug = (state: FakePort['state']) => {
    port.state = state;
    access.dispatchEvent(new Event('statechange'));
  };
  return { input: createMidiInput(() => browser), asked, play, plug };
}

test('asks for no more than notes, and only when it is told to', async () => {
  const { input, asked } = fakeBrowser('prompt');
  await input.reconnect();
  expect(asked).toEqual([]);
  expect(input.state.value).toBe('off');
  await input.connect();
  expect(asked).toEqual([{ sysex: false }]);
  expect(input.state.value).toBe('connected');
  expect(input.names.value).toEqual(['Piano']);
});

test('connects again by itself where it was allowed before', async () => {
  const { input, asked } = fakeBrowser('granted');
  await input.reconnect();
  expect(asked).toHaveLength(1);
  expect(input.state.value).toBe('connected');
});

test('records with the times of the messages, and shows which keys are down', async () => {
  const { input, play } = fakeBrowser('granted');
  await input.connect();
  const start = performance.now();
  const recording = input.record();
  play(start + 1000, 0x90, 60, 80);
  expect(input.down.value).toEqual([60]);
  play(start + 1500, 0x80, 60, 0);
  expect(input.down.value).toEqual([]);
  const [note] = recording.take().notes;
  expect(note!.off! - note!.on).toBeCloseTo(0.5, 6);
  expect(note!.on).toBeCloseTo(1, 1);
  recording.stop();
  play(start + 2000, 0x90, 62, 80);
  expect(recording.take().notes).toHaveLength(1);
});

test('has of a run in which the keyboard was unplugged what went before, and a whole take of the next', async () => {
  const { input, play, plug } = fakeBrowser('granted');
  await input.connect();
  const broken = input.record();
  play(performance.now(), 0x90, 60, 80);
  expect(broken.isBroken.value).toBe(false);
  plug('disconnected');
  expect(broken.isBroken.value).toBe(true);
  expect(input.state.value).toBe('empty');
  expect(input.down.value).toEqual([]);
  plug('connected');
  expect(input.state.value).toBe('connected');
  const next = input.record();
  play(performance.now(), 0x90, 64, 80);
  expect(broken.take().notes.map(({ midi }) => midi)).toEqual([60]);
  expect(next.take().notes.map(({ midi }) => midi)).toEqual([64]);
  expect(next.isBroken.value).toBe(false);
});

test('tells keys and pedal as they come, and leaves keys with another meaning out of a recording', async () => {
  const { input, play } = fakeBrowser('granted');
  await input.connect();
  const told: unknown[] = [];
  const unlisten = input.listen((message) => told.push(message));
  const recording = input.record(new Set([21]));
  play(1, 0x90, 21, 80);
  play(2, 0x90, 21, 0);
  play(3, 0xb0, 64, 100);
  play(4, 0xb0, 64, 63);
  play(5, 0xb0, 1, 100);
  play(6, 0x91, 60, 80);
  unlisten();
  play(7, 0x81, 60, 0);
  expect(told).toEqual([
    { kind: 'struck', midi: 21, at: 1 },
    { kind: 'lifted', midi: 21, at: 2 },
    { kind: 'pedal', isDown: true, at: 3 },
    { kind: 'pedal', isDown: false, at: 4 },
    { kind: 'struck', midi: 60, at: 6 },
  ]);
  expect(recording.take().notes.map(({ midi }) => midi)).toEqual([60]);
});

test('a take that begins with the pedal held knows of it, though it was pressed before', async () => {
  const { input, play, plug } = fakeBrowser('granted');
  await input.connect();
  play(1, 0xb0, 64, 127);
  const held = input.record();
  held.forgetBefore(performance.now() + 400);
  const on = performance.now() + 500;
  play(on, 0x90, 60, 80);
  play(on + 100, 0xb0, 64, 0);
  const take = held.take();
  expect(take.pedal).toEqual([{ from: 0, to: expect.closeTo(take.notes[0]!.on + 0.1, 6) }]);
  expect(isPedalled(take)).toBe(true);
  expect(input.record().take().pedal).toEqual([]);
  play(on + 200, 0xb0, 64, 127);
  plug('disconnected');
  plug('connected');
  expect(input.record().take().pedal).toEqual([]);
});

test.each([
  [new DOMException('no', 'NotAllowedError'), 'refused'],
  [new DOMException('no', 'SecurityError'), 'refused'],
  [new DOMException('no', 'InvalidStateError'), 'missing'],
] as const)('says what came of asking: %s', async (failure, state) => {
  const { input } = fakeBrowser('prompt', failure);
  await input.connect();
  expect(input.state.value).toBe(state);
});

test('is missing in a browser without Web MIDI, and can be given up', async () => {
  const bare = createMidiInput(() => ({}));
  await bare.reconnect();
  expect(bare.state.value).toBe('off');
  await bare.connect();
  expect(bare.state.value).toBe('missing');
  const { input, play } = fakeBrowser('granted');
  await input.connect();
  const recording = input.record();
  input.disconnect();
  play(0, 0x90, 60, 80);
  expect(input.state.value).toBe('off');
  expect(recording.take().notes).toEqual([]);
});
