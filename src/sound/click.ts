/** The two clicks of the metronome, like two wood blocks. They are computed, so that the app carries no sound file. */

import type { GridBeat } from './schedule';

interface Block {
  /** Hz. Between 2 and 4 kHz: heard through a piano, and by small loudspeakers. */
  readonly pitch: number;
  readonly level: number;
}

const ACCENT: Block = { pitch: 3100, level: 0.9 };
const NORMAL: Block = { pitch: 2300, level: 0.6 };

/** Seconds. */
const LENGTH = 0.08;
const ATTACK = 0.0005;
const RELEASE = 0.01;

/** A struck block rings on a few partials, the higher ones dying sooner: ratio to the pitch, share, seconds to fall to 1/e. */
const PARTIALS = [
  { ratio: 1, share: 0.7, decay: 0.012 },
  { ratio: 1.52, share: 0.3, decay: 0.005 },
] as const;

/** A rise from just above 0 to 1: smooth, so that there is no snap, and never 0, so that the click begins on its beat. */
const rise = (share: number): number => Math.sin((Math.PI / 2) * Math.min(1, share)) ** 2;

/** The samples of one click, between -1 and 1. The first one already sounds; the last one is silent. */
export function clickSamples(sampleRate: number, isAccent: boolean): Float32Array<ArrayBuffer> {
  const { pitch, level } = isAccent ? ACCENT : NORMAL;
  const samples = new Float32Array(Math.round(LENGTH * sampleRate));
  const last = samples.length - 1;
  for (let i = 0; i <= last; i += 1) {
    const seconds = i / sampleRate;
    const edges = rise((i + 1) / (ATTACK * sampleRate)) * rise((last - i) / (RELEASE * sampleRate));
    for (const { ratio, share, decay } of PARTIALS) {
      const swing = Math.cos(2 * Math.PI * pitch * ratio * seconds);
      samples[i]! += level * edges * share * Math.exp(-seconds / decay) * swing;
    }
  }
  return samples;
}

/** Seconds in which `silence` makes the clicks inaudible. */
export const FADE = 0.1;

export interface Clicker {
  /** Puts a click on the audio clock, its first sample at the time of the beat. */
  click(beat: Pick<GridBeat, 'time' | 'isAccent'>): void;
  /** Fades out what sounds and all that is still to come. The clicker cannot be used again. */
  silence(): void;
}

/** Squared, because half way on a slider should sound half as loud. */
export const gainOf = (volume: number): number => volume * volume;

/** `volume` goes from 0 to 1. */
export function createClicker(
  context: BaseAudioContext,
  volume: number,
  output: AudioNode = context.destination,
): Clicker {
  const bufferOf = (isAccent: boolean): AudioBuffer => {
    const samples = clickSamples(context.sampleRate, isAccent);
    const { sampleRate } = context;
    const buffer = new AudioBuffer({ length: samples.length, sampleRate });
    buffer.copyToChannel(samples, 0);
    return buffer;
  };
  const accent = bufferOf(true);
  const normal = bufferOf(false);
  const gain = new GainNode(context, { gain: gainOf(volume) });
  gain.connect(output);
  return {
    click: ({ time, isAccent }) => {
      const source = new AudioBufferSourceNode(context, { buffer: isAccent ? accent : normal });
      source.connect(gain);
      source.addEventListener('ended', () => source.disconnect());
      source.start(time);
    },
    silence: () => {
      // Cutting a click off would itself be heard as a click.
      gain.gain.setTargetAtTime(0, context.currentTime, FADE / 10);
    },
  };
}
