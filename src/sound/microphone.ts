/**
 * The microphone. The browser asks the person when it is opened, so only ever in answer to a button, and it is open only
 * while something is to be heard. The sound stays in memory until it has been worked out, and is kept nowhere.
 */
import { signal, type ReadonlySignal } from '@preact/signals';
import type { Sound } from '../../shared/listening/sound/spectrum';
import { trustedScriptUrl } from '../trusted';
import { setAudioSession } from './clock';
import type { Collected } from './microphone-worklet';
// oxlint-disable-next-line import/default -- the address of the built file, from Vite
import workletUrl from './microphone-worklet?worker&url';

export type MicrophoneState =
  /** Not asked for, or given up. */
  | 'off'
  | 'asking'
  /** The person or the browser said no. */
  | 'refused'
  /** There is none, it cannot be opened, or this browser cannot hand its sound over. */
  | 'missing'
  /** Allowed, and closed. */
  | 'ready'
  | 'open';

export interface Capture {
  /** Whether the browser cancels echo, suppresses noise or levels loudness, though it was asked not to. */
  readonly isFiltered: boolean;
  /** The microphone was cut off: unplugged, taken by a telephone call, or no longer allowed. */
  readonly isBroken: ReadonlySignal<boolean>;
  /** Leaves out what came before a time of `performance.now()`. */
  forgetBefore(at: number): void;
  /** Milliseconds since something loud was heard. */
  quietFor(): number;
  /** What was heard so far. */
  sound(): Sound;
  /** Calls back with what comes in, as it comes, until the microphone is closed. */
  listen(listener: (samples: Float32Array) => void): void;
  /** Whose clock it hears by; the page can sound something on it as well. */
  readonly context: AudioContext;
  /** Seconds of that clock at which `sound` begins. */
  beginsAt(): number;
  /** Seconds that sound takes to come in, where the device tells; else 0. */
  readonly inputLatency: number;
  /** Closes the microphone. */
  stop(): void;
}

export interface Microphone {
  readonly state: ReadonlySignal<MicrophoneState>;
  /** In a user's gesture, as the browser may ask. Null if the microphone cannot be had; the state says why. */
  open(): Promise<Capture | null>;
  /** It was allowed on an earlier visit; whether it still is will be seen when it is opened. */
  assumeAllowed(): void;
  giveUp(): void;
}

/** Processing that helps speech and spoils a piano: onsets move by up to 12 ms, loud notes are cut. */
const UNPROCESSED = { echoCancellation: false, noiseSuppression: false, autoGainControl: false };
/** Seconds after which the beginning is dropped: no run is so long, and memory is not endless. */
const LONGEST = 600;
/** Louder than this against the loudest block so far is playing. */
const LOUD = 0.2;

export function createMicrophone(): Microphone {
  const state = signal<MicrophoneState>('off');
  return {
    state,
    assumeAllowed: () => {
      if (state.peek() === 'off') state.value = 'ready';
    },
    giveUp: () => {
      state.value = 'off';
    },
    open: async () => {
      const devices = navigator.mediaDevices as MediaDevices | undefined;
      if (devices === undefined || !('AudioWorkletNode' in window)) {
        state.value = 'missing';
        return null;
      }
      if (state.peek() !== 'ready') state.value = 'asking';
      // Made here, while it is sure that the person has just pressed something.
      const context = new AudioContext();
      try {
        const stream = await devices.getUserMedia({ audio: UNPROCESSED });
        setAudioSession('play-and-record');
        const capture = await capturing(context, stream, () => {
          state.value = 'ready';
        });
        state.value = 'open';
        return capture;
      } catch (error) {
        void context.close();
        state.value = isRefusal(error) ? 'refused' : 'missing';
        return null;
      }
    },
  };
}

const isRefusal = (error: unknown): boolean =>
  error instanceof DOMException && ['NotAllowedError', 'SecurityError'].includes(error.name);

async function capturing(
  context: AudioContext,
  stream: MediaStream,
  onClosed: () => void,
): Promise<Capture> {
  const stopTracks = () => {
    for (const track of stream.getTracks()) track.stop();
  };
  try {
    await context.audioWorklet.addModule(trustedScriptUrl(workletUrl));
    await context.resume();
  } catch (error) {
    stopTracks();
    throw error;
  }
  let blocks: Float32Array[] = [];
  let [samples, end, loudest, loudAt] = [0, 0, 0, performance.now()];
  const listeners: ((samples: Float32Array) => void)[] = [];
  const node = new AudioWorkletNode(context, 'collector');
  node.port.addEventListener('message', ({ data }: MessageEvent<Collected>) => {
    end = data.end;
    for (const block of data.blocks) {
      const peak = block.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
      loudest = Math.max(loudest, peak);
      if (peak > LOUD * loudest) loudAt = performance.now();
      blocks.push(block);
      samples += block.length;
    }
    dropDownTo(LONGEST * context.sampleRate);
    const together = joined(data.blocks);
    for (const listener of listeners) listener(together);
  });
  node.port.start();
  // Its own output is silence; what leads nowhere is not asked for sound by every browser.
  context.createMediaStreamSource(stream).connect(node).connect(context.destination);

  const isBroken = signal(false);
  const tell = () => {
    isBroken.value = true;
  };
  const [track] = stream.getAudioTracks();
  track?.addEventListener('ended', tell);
  track?.addEventListener('mute', tell);
  const watch = () => {
    if (context.state !== 'running') tell();
  };
  context.addEventListener('statechange', watch);

  const dropDownTo = (most: number) => {
    let dropped = 0;
    while (dropped < blocks.length && samples > most) samples -= blocks[dropped++]!.length;
    blocks = blocks.slice(dropped);
  };
  return {
    isFiltered: isFiltered(stream),
    isBroken,
    forgetBefore: (at) => {
      dropDownTo(((performance.now() - at) / 1000) * context.sampleRate);
      loudest = 0;
    },
    quietFor: () => performance.now() - loudAt,
    sound: () => ({ samples: joined(blocks), rate: context.sampleRate }),
    listen: (listener) => void listeners.push(listener),
    context,
    beginsAt: () => (end - samples) / context.sampleRate,
    inputLatency: settingsOf(stream).latency ?? 0,
    stop: () => {
      context.removeEventListener('statechange', watch);
      stopTracks();
      setAudioSession('auto');
      node.port.close();
      void context.close();
      blocks = [];
      onClosed();
    },
  };
}

/** The latency (W3C, Media Capture and Streams) is not in TypeScript's DOM types. */
const settingsOf = (stream: MediaStream): MediaTrackSettings & { readonly latency?: number } =>
  stream.getAudioTracks()[0]?.getSettings() ?? {};

function isFiltered(stream: MediaStream): boolean {
  const settings = settingsOf(stream);
  return Boolean(
    settings.echoCancellation || settings.noiseSuppression || settings.autoGainControl,
  );
}

function joined(blocks: readonly Float32Array[]): Float32Array {
  const all = new Float32Array(blocks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const block of blocks) {
    all.set(block, at);
    at += block.length;
  }
  return all;
}

/** The microphone of this device. */
export const microphone: Microphone = createMicrophone();
