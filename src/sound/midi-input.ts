/**
 * A MIDI keyboard through Web MIDI. The browser asks the person when `connect` is called, so only ever in answer to a
 * button; later visits `reconnect` without asking. Every refusal or failure is a state to be shown: all works without.
 */
import { computed, signal, type ReadonlySignal } from '@preact/signals';
import { collecting } from '../../shared/listening/collect';
import { sliceOf, type Take } from '../../shared/listening/take';
import { type KeyMessage, keyMessageOf, PEDAL_DOWN } from './key-message';

export type MidiState =
  /** Not asked for, or given up. */
  | 'off'
  | 'asking'
  /** The person or the browser said no. */
  | 'refused'
  /** This browser has no Web MIDI, or the device none that works. */
  | 'missing'
  /** Allowed, but nothing is plugged in. */
  | 'empty'
  | 'connected';

export interface MidiRecording {
  /** What was played since the recording began, up to where a keyboard was unplugged. */
  take(): Take;
  /** A keyboard was unplugged meanwhile. */
  readonly isBroken: ReadonlySignal<boolean>;
  /** Milliseconds since the last message came; Infinity before the first. */
  quietFor(): number;
  /** What was played before a moment of `performance.now()` does not count. */
  forgetBefore(moment: number): void;
  stop(): void;
}

export interface MidiInput {
  readonly state: ReadonlySignal<MidiState>;
  /** What the keyboards call themselves. */
  readonly names: ReadonlySignal<readonly string[]>;
  /** Keys that are down now, as MIDI numbers. */
  readonly down: ReadonlySignal<readonly number[]>;
  /** Asks for access; in a user's gesture. */
  connect(): Promise<void>;
  /** Connects only where the browser will not ask. */
  reconnect(): Promise<void>;
  disconnect(): void;
  /** Keys that are `left out` are no notes: they have another meaning. */
  record(leftOut?: ReadonlySet<number>): MidiRecording;
  /** Calls back with each key and pedal, as it comes, until the function that is returned is called. */
  listen(listener: (message: KeyMessage) => void): () => void;
}

/** What of the browser is needed; older ones lack it. */
type Browser = Partial<Pick<Navigator, 'requestMIDIAccess' | 'permissions'>>;

type Listener = (data: Uint8Array, at: number) => void;

const NO_KEYS: ReadonlySet<number> = new Set();

export function createMidiInput(browser: () => Browser): MidiInput {
  const state = signal<Exclude<MidiState, 'empty' | 'connected'> | 'allowed'>('off');
  const ports = signal<readonly string[]>([]);
  const down = signal<readonly number[]>([]);
  /** As no keyboard can be asked, known only from what it has said since it was connected. */
  let isPedalDown = false;
  const listeners = new Set<Listener>();
  const unplugged = new Set<() => void>();
  let access: MIDIAccess | null = null;

  const onMessage = ({ data, timeStamp }: MIDIMessageEvent) => {
    if (data === null) return;
    const message = keyMessageOf(data, timeStamp);
    if (message !== null) follow(message);
    for (const listener of listeners) listener(data, timeStamp);
  };
  /** Which keys are down, for lights; and whether the pedal is, for takes that begin meanwhile. */
  const follow = (message: KeyMessage) => {
    if (message.kind === 'pedal') {
      isPedalDown = message.isDown;
      return;
    }
    const others = down.value.filter((midi) => midi !== message.midi);
    down.value = message.kind === 'struck' ? [...others, message.midi] : others;
  };
  const liftAll = () => {
    down.value = [];
    isPedalDown = false;
  };
  const lookAgain = () => {
    const inputs = [...(access?.inputs.values() ?? [])].filter(
      (port) => port.state === 'connected',
    );
    for (const input of inputs) input.onmidimessage = onMessage;
    const isFewer = inputs.length < ports.value.length;
    ports.value = inputs.map(({ name }) => name ?? 'keyboard');
    if (!isFewer) return;
    liftAll();
    for (const tell of unplugged) tell();
  };
  const connect = async () => {
    const { requestMIDIAccess } = browser();
    if (requestMIDIAccess === undefined) {
      state.value = 'missing';
      return;
    }
    state.value = 'asking';
    try {
      access = await requestMIDIAccess.call(browser(), { sysex: false });
      access.addEventListener('statechange', lookAgain);
      state.value = 'allowed';
      lookAgain();
    } catch (error) {
      const isRefusal = error instanceof DOMException && error.name === 'NotAllowedError';
      state.value = isRefusal || isSecurity(error) ? 'refused' : 'missing';
    }
  };

  return {
    state: computed(() => {
      if (state.value !== 'allowed') return state.value;
      return ports.value.length === 0 ? 'empty' : 'connected';
    }),
    names: ports,
    down,
    connect,
    reconnect: async () => {
      if (state.peek() !== 'off' || !(await isGranted(browser()))) return;
      await connect();
    },
    disconnect: () => {
      access?.removeEventListener('statechange', lookAgain);
      for (const input of access?.inputs.values() ?? []) input.onmidimessage = null;
      access = null;
      ports.value = [];
      liftAll();
      state.value = 'off';
    },
    record: (leftOut = NO_KEYS) => {
      const collector = collecting('midi');
      if (isPedalDown) collector.add(PEDAL_DOWN, 0);
      const start = performance.now();
      const isBroken = signal(false);
      let first = -Infinity;
      let last = -Infinity;
      const listener: Listener = (data, at) => {
        const message = keyMessageOf(data, at);
        if (message !== null && message.kind !== 'pedal' && leftOut.has(message.midi)) return;
        last = performance.now();
        collector.add(data, (at - start) / 1000);
      };
      const stop = () => {
        listeners.delete(listener);
        unplugged.delete(tell);
      };
      const tell = () => {
        stop();
        isBroken.value = true;
      };
      listeners.add(listener);
      unplugged.add(tell);
      return {
        take: () => sliceOf(collector.take(), first, Infinity),
        isBroken,
        quietFor: () => performance.now() - last,
        forgetBefore: (moment) => {
          first = (moment - start) / 1000;
        },
        stop,
      };
    },
    listen: (listener) => {
      const onData: Listener = (data, at) => {
        const message = keyMessageOf(data, at);
        if (message !== null) listener(message);
      };
      listeners.add(onData);
      return () => listeners.delete(onData);
    },
  };
}

/** Some browsers name a refusal by the page's policy otherwise. */
const isSecurity = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'SecurityError';

async function isGranted({ permissions }: Browser): Promise<boolean> {
  try {
    const name = 'midi' as PermissionName;
    return (await permissions?.query({ name }))?.state === 'granted';
  } catch {
    return false; // A browser that does not know the name has to be asked by the button.
  }
}

/** The keyboards of this device. */
export const midi: MidiInput = createMidiInput(() => navigator);
