/** Plays the computed piano tones on the audio clock. */
import { gainOf } from './click';
import type { Stroke } from './passage';
import { pianoSamples } from './piano-tone';

/** Loudness of a note, and of an accent that stands out from it: eight notes at once stay about within full scale. */
const LOUDNESS = 0.3;
const ACCENT = 0.45;
/** Seconds in which the damper lets a string fall to 1/e; and so many times that until it is silent. */
const DAMPING = 0.05;
const SILENT_AFTER = 8;

/** Tones are kept once computed, about half a megabyte each: as many as two hands over four octaves use, and some. */
const MOST_TONES = 48;
const tones = new Map<string, AudioBuffer>();

function toneOf(midi: number, sampleRate: number): AudioBuffer {
  const key = `${midi} at ${sampleRate}`;
  const known = tones.get(key);
  if (known !== undefined) return known;
  const samples = pianoSamples(midi, sampleRate);
  const tone = new AudioBuffer({ length: samples.length, sampleRate });
  tone.copyToChannel(samples, 0);
  // The oldest goes.
  if (tones.size === MOST_TONES) tones.delete(tones.keys().next().value!);
  tones.set(key, tone);
  return tone;
}

export interface Piano {
  /** Computes a tone beforehand, which takes some milliseconds. */
  prepare(midi: number): void;
  /** A key goes down at `time`, in seconds of the audio clock, and comes up when its length is over. */
  strike(stroke: Stroke, time: number): void;
}

/** `volume` goes from 0 to 1. */
export function createPiano(context: BaseAudioContext, volume: number, output: AudioNode): Piano {
  return {
    prepare: (midi) => void toneOf(midi, context.sampleRate),
    strike: ({ midi, length, isAccented }, time) => {
      const source = new AudioBufferSourceNode(context, {
        buffer: toneOf(midi, context.sampleRate),
      });
      const gain = new GainNode(context, {
        gain: gainOf(volume) * (isAccented ? ACCENT : LOUDNESS),
      });
      source.connect(gain).connect(output);
      source.addEventListener('ended', () => gain.disconnect());
      gain.gain.setTargetAtTime(0, time + length, DAMPING);
      source.start(time);
      source.stop(time + length + SILENT_AFTER * DAMPING);
    },
  };
}
