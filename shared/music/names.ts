/** Note names as people write them: letters, German letters, fixed-do syllables. */
import { bottomNames } from './spelling';
import type { StartingNote } from './deck';
import { notePartsOf, type NoteName } from './theory';

export const NAME_STYLES = ['letters', 'german', 'syllables'] as const;
export type NameStyle = (typeof NAME_STYLES)[number];

const SIGNS: Readonly<Record<number, string>> = { [-2]: '♭♭', [-1]: '♭', 0: '', 1: '♯', 2: '𝄪' };
const SPOKEN: Readonly<Record<number, string>> = {
  [-2]: ' double flat',
  [-1]: ' flat',
  0: '',
  1: ' sharp',
  2: ' double sharp',
};
const SYLLABLES: Readonly<Record<string, string>> = {
  C: 'Do',
  D: 'Re',
  E: 'Mi',
  F: 'Fa',
  G: 'Sol',
  A: 'La',
  B: 'Si',
};

/** German names: H is B natural, B is B flat; "is" for each sharp, "es" for each flat ("s" after E and A). */
function germanName(letter: string, alter: number): string {
  const stem = letter === 'B' ? 'H' : letter;
  if (alter >= 0) return stem + 'is'.repeat(alter);
  if (letter === 'B' && alter === -1) return 'B';
  const shortened = letter === 'E' || letter === 'A';
  return shortened ? `${stem}s${'es'.repeat(-alter - 1)}` : stem + 'es'.repeat(-alter);
}

/** The name to show, without octave: "Bb4" is B♭, B or Si♭. */
export function displayName(name: NoteName, style: NameStyle = 'letters'): string {
  const { letter, alter } = notePartsOf(name);
  if (style === 'german') return germanName(letter, alter);
  return (style === 'syllables' ? SYLLABLES[letter]! : letter) + (SIGNS[alter] ?? '');
}

/** The name to be read aloud by assistive technology: "Bb4" is "B flat". */
export function spokenName(name: NoteName, style: NameStyle = 'letters'): string {
  const { letter, alter } = notePartsOf(name);
  if (style === 'german') return germanName(letter, alter);
  return (style === 'syllables' ? SYLLABLES[letter]! : letter) + (SPOKEN[alter] ?? '');
}

/** A starting note where no chord decides its spelling: "C♯/D♭". */
export const startingNoteName = (note: StartingNote, style: NameStyle = 'letters'): string =>
  bottomNames(note)
    .map((name) => displayName(name, style))
    .join('/');
