/** Keys of a MIDI keyboard that were learnt, to rate and to go on with the hands on the piano. */
import { displayName } from '../../shared/music/names';
import { FLUENCIES, type Fluency } from '../../shared/log/events';
import { isBlackKey } from '../../shared/music/sequence';
import { type Preferences, preferences } from '../preferences';

export type PianoKeys = Preferences['pianoKeys'];

export type KeyAction =
  | { readonly kind: 'rate'; readonly fluency: Fluency }
  | { readonly kind: 'forward' }
  | { readonly kind: 'back' };

export interface LearntKey {
  readonly midi: number;
  readonly action: KeyAction;
}

/** What the keys of a piano are called where no chord decides it. */
const NAMES = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'] as const;
const HIGHEST = 108;

/** All of them, from the worst level to the best, then on and back. */
export function learntKeys({ levels, forward, back }: PianoKeys): readonly LearntKey[] {
  const pairs: readonly (readonly [number | null, KeyAction])[] = [
    ...FLUENCIES.map((_, i) => [levels[i]!, { kind: 'rate', fluency: i as Fluency }] as const),
    [forward, { kind: 'forward' }],
    [back, { kind: 'back' }],
  ];
  return pairs.flatMap(([midi, action]) => (midi === null ? [] : [{ midi, action }]));
}

export const hasLevelKeys = ({ levels }: PianoKeys): boolean =>
  levels.some((level) => level !== null);

/** "B♭0": the name with the octave, of which the fourth begins with middle C. */
export function pianoKeyName(midi: number): string {
  const octave = Math.floor(midi / 12) - 1;
  return `${displayName(`${NAMES[midi % 12]!}${octave}`, preferences.value.nameStyle)}${octave}`;
}

export const actionText = (action: KeyAction): string => {
  if (action.kind === 'rate') return FLUENCIES[action.fluency];
  return action.kind === 'forward' ? 'on' : 'back';
};

/** On a key there is room for one sign. */
export function signOf(action: KeyAction): string {
  if (action.kind === 'rate') return String(action.fluency + 1);
  return action.kind === 'forward' ? '›' : '‹';
}

/** Five neighbouring white keys, the lowest of which is given; null where there are not so many. */
export function blockFrom(lowest: number): PianoKeys['levels'] | null {
  if (isBlackKey(lowest)) return null;
  const whites = Array.from({ length: 12 }, (_, i) => lowest + i).filter((key) => !isBlackKey(key));
  const [first, second, third, fourth, fifth] = whites;
  return fifth! > HIGHEST ? null : [first!, second!, third!, fourth!, fifth!];
}
