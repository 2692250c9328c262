import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createMicrophone } from '../../src/sound/microphone';

class FakeContext extends EventTarget {
  state = 'running';
  sampleRate = 48_000;
  destination = {};
  audioWorklet = { addModule: async () => undefined };
  constructor() {
    super();
    made.context = this;
  }
  resume = async () => undefined;
  close = async () => {
    this.change('closed');
  };
  createMediaStreamSource = () => ({ connect: (node: unknown) => node });
  change(state: string) {
    this.state = state;
    this.dispatchEvent(new Event('statechange'));
  }
}

class FakeNode {
  port = { addEventListener: () => undefined, start: () => undefined, close: () => undefined };
  connect = () => undefined;
}

/** What the page has opened last. */
const made: { context: FakeContext | null; track: EventTarget } = {
  context: null,
  track: new EventTarget(),
};

beforeEach(() => {
  made.track = Object.assign(new EventTarget(), {
    stop: () => undefined,
    getSettings: () => ({}),
  });
  const stream = { getTracks: () => [made.track], getAudioTracks: () => [made.track] };
  vi.stubGlobal('AudioContext', FakeContext);
  vi.stubGlobal('AudioWorkletNode', FakeNode);
  Object.defineProperty(navigator, 'mediaDevices', {
    configurable: true,
    value: { getUserMedia: async () => stream },
  });
});
afterEach(() => vi.unstubAllGlobals());

const cuts: readonly (readonly [string, () => void])[] = [
  ['is unplugged, or no longer allowed', () => made.track.dispatchEvent(new Event('ended'))],
  ['is taken by a telephone call', () => made.track.dispatchEvent(new Event('mute'))],
  ['has its sound interrupted', () => made.context!.change('interrupted')],
];

test.each(cuts)(
  'a microphone that %s is known to be cut off, and can be opened again',
  async (_, cut) => {
    const microphone = createMicrophone();
    const capture = (await microphone.open())!;
    expect([microphone.state.value, capture.isBroken.value]).toEqual(['open', false]);
    cut();
    expect(capture.isBroken.value).toBe(true);
    capture.stop();
    expect(microphone.state.value).toBe('ready');
    expect((await microphone.open())!.isBroken.value).toBe(false);
  },
);

test('a microphone that is closed at the end of a run was not cut off', async () => {
  const capture = (await createMicrophone().open())!;
  capture.stop();
  expect(capture.isBroken.value).toBe(false);
});
