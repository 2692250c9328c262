import type { NameOf } from '../../shared/music/fingering/words';

/** Names the keys of a chord in every octave. `keys` are MIDI numbers within an octave, `names` belong to them. */
export const nameOfKeys =
  (keys: readonly number[], names: readonly string[]): NameOf =>
  (key) =>
    names[keys.findIndex((other) => (key - other) % 12 === 0)]!;
