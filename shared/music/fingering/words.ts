/** Fingering in words: position changes, stretches, how two fingerings differ, why typed digits cannot be played. */
import type { HandCause } from './ergonomic';
import type { OwnProblem } from './own';
import type { FingeredNote, PositionChange, Stretch } from './positions';
import type { Fingering } from './result';

/** Shows a MIDI number as the person's own note name, without octave. */
export type NameOf = (key: number) => string;

const INTERVALS = [
  'unison',
  'semitone',
  'whole tone',
  'minor third',
  'major third',
  'fourth',
  'tritone',
  'fifth',
  'minor sixth',
  'major sixth',
  'minor seventh',
  'major seventh',
];

/** `intervalText(5)` is "a fourth". Semitones below an octave. */
export const intervalText = (size: number): string => `a ${INTERVALS[size] ?? `${size} semitones`}`;

/** "C", "C and E", "C, E and G". */
export const listOf = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

const colourOf = ({ black }: FingeredNote): string => (black ? 'black' : 'white');

/** "Thumb under from 3 on G to C, a fourth, white to white: hard." */
export function changeText(change: PositionChange, nameOf: NameOf): string {
  const { kind, from, to, size, level } = change;
  const move =
    kind === 'thumb under'
      ? `Thumb under from ${from.finger} on ${nameOf(from.key)} to ${nameOf(to.key)}`
      : `Hand over from the thumb on ${nameOf(from.key)} to ${to.finger} on ${nameOf(to.key)}`;
  return `${move}, ${intervalText(size)}, ${colourOf(from)} to ${colourOf(to)}: ${level}.`;
}

/** "Wide for this hand: 3 and 4 on F and A, a major third." */
export function stretchText({ lower, upper, size }: Stretch, nameOf: NameOf): string {
  const fingers = `${lower.finger} and ${upper.finger}`;
  const keys = `${nameOf(lower.key)} and ${nameOf(upper.key)}`;
  return `Wide for this hand: ${fingers} on ${keys}, ${intervalText(size)}.`;
}

const BURDENS: Readonly<Record<HandCause, string>> = {
  weakFinger: 'more of the fourth finger',
  thumbOnBlack: 'the thumb on black keys',
  fifthOnBlack: 'the fifth finger on a black key',
  beyondReach: 'intervals at the limit of the fingers',
  stretch: 'more stretching',
  smallSpan: 'fingers closer together than they like',
  largeSpan: 'a hand held more open',
  threeToFour: '3 and 4 one after the other',
  fourOnBlack: 'a black key for 4 beside a white one for 3',
  thumbPassing: 'the thumb passing on one level',
  changeCount: 'more shifting of the hand',
  changeSize: 'wider shifts of the hand',
};

/** What a fingering asks of the hand more and less than another: "Asks more stretching; spares the thumb on black keys." */
export function comparisonText(one: Fingering, other: Fingering): string {
  const differences = (Object.keys(BURDENS) as HandCause[])
    .map((cause) => ({
      text: BURDENS[cause],
      points: (one.cost.causes[cause] ?? 0) - (other.cost.causes[cause] ?? 0),
    }))

    .toSorted((a, b) => b.points - a.points);
  const [most, least] = [differences[0]!, differences.at(-1)!];
  const asks = most.points > 0 ? `Asks ${most.text}` : '';
  const spares = least.points < 0 ? `${asks ? 'spares' : 'Spares'} ${least.text}` : '';
  const text = [asks, spares].filter(Boolean).join('; ');
  return text === '' ? 'As easy for the hand.' : `${text}.`;
}

/** What a person should know to type a fingering that can be played. `keyAt` gives the key of a note of the run. */
export function problemText(
  problem: OwnProblem,
  keyAt: (index: number) => number,
  nameOf: NameOf,
): string {
  switch (problem.kind) {
    case 'digits':
      return problem.found === ''
        ? 'Type the fingers from the lowest note up, 1 for the thumb to 5.'
        : `Fingers are the digits 1 to 5; "${problem.found}" is none.`;
    case 'count': {
      const [one, two] = problem.wanted;
      return `${problem.found} fingers: ${one} are needed for one octave with its top note, ${two} for two.`;
    }
    case 'unclear':
      return `One octave does not show how this goes on: type two octaves, ${problem.wanted} fingers.`;
    case 'irregular':
      return 'This can be played once, but not repeated from octave to octave.';
    case 'repeated':
    case 'crossing': {
      const { index, from, to } = problem;
      const [lower, upper] = [nameOf(keyAt(index)), nameOf(keyAt(index + 1))];
      return problem.kind === 'repeated'
        ? `${lower} and ${upper} both have ${from}: one finger cannot join two keys.`
        : `From ${lower} with ${from} to ${upper} with ${to}, two fingers would cross: only the thumb passes under the others, or they over the thumb.`;
    }
  }
}
