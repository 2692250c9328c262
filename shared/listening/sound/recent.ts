/** The last seconds of a sound that is still coming in. */
import type { Sound } from './spectrum';

export interface Recent {
  /** Always the same array, which holds the sound from `first` to `end`; what follows in it means nothing. */
  readonly sound: Sound;
  /** Samples since the beginning: of the first that is held, and of the first that has not come yet. */
  first(): number;
  end(): number;
  add(samples: Float32Array): void;
}

/** Holds at least the last `seconds`, and at most twice as much. What is added at once may be no longer. */
export function recentOf(rate: number, seconds: number): Recent {
  const kept = Math.round(seconds * rate);
  const samples = new Float32Array(2 * kept);
  let [first, held] = [0, 0];
  return {
    sound: { samples, rate },
    first: () => first,
    end: () => first + held,
    add: (added) => {
      if (held + added.length > samples.length) {
        const dropped = held - (kept - added.length);
        samples.copyWithin(0, dropped, held);
        first += dropped;
        held -= dropped;
      }
      samples.set(added, held);
      held += added.length;
    },
  };
}

/** What is held from a time in seconds on. */
export const heldIn = ({ sound, first, end }: Recent, from: number): Float32Array =>
  sound.samples.subarray(Math.max(0, Math.round(from * sound.rate) - first()), end() - first());
