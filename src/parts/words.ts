/** Plain words for the things of the deck, the same on every screen. */
import { chordOf, type ChordId } from '../../shared/music/chords';
import type { StartingNote, Way } from '../../shared/music/deck';
import { displayName, spokenName, startingNoteName } from '../../shared/music/names';
import { spell } from '../../shared/music/spelling';
import { HANDS_IN_WORDS } from '../../shared/planning/reasons';
import { preferences } from '../preferences';

/** What a student is called. */
export const studentText = (name: string | null): string =>
  name === null || name === '' ? 'Student without a name' : name;

/** Signs that turn the direction of what follows, which no name needs: a file from elsewhere may hold one that has them. */
const TURNS = /[\u202A-\u202E\u2066-\u2069]/g;
const FROM_THE_RIGHT = /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}]/u;

/** The same within a sentence, whose order a name that is written from the right must not change. */
export function nameText(name: string | null): string {
  const text = studentText(name).replace(TURNS, '');
  return FROM_THE_RIGHT.test(text) ? `\u2068${text}\u2069` : text;
}

/** "hands together, four octaves". */
export const wayText = (way: Way): string => HANDS_IN_WORDS[way];

/** "D" or "C♯/D♭", in the person's name style. */
export const noteText = (note: StartingNote): string =>
  startingNoteName(note, preferences.value.nameStyle);

export interface ChordText {
  /** "major triad, first inversion". */
  readonly name: string;
  /** "D, major triad, first inversion". */
  readonly title: string;
  /** Bottom note first. */
  readonly names: readonly string[];
  /** The bottom note: "D". */
  readonly bottom: string;
  /** "D F B♭", and "D, F, B flat" to be read aloud. */
  readonly notes: string;
  readonly spoken: string;
}

/** The words of one arpeggio, spelt and named as the person prefers. */
export function chordText(note: StartingNote, chord: ChordId): ChordText {
  const { nameStyle, blackNames } = preferences.value;
  const names = spell(note, chord, blackNames);
  const shown = names.map((name) => displayName(name, nameStyle));
  const bottom = shown[0]!;
  const chordName = chordOf(chord).name;
  return {
    name: chordName,
    title: `${bottom}, ${chordName}`,
    names: shown,
    bottom,
    notes: shown.join(' '),
    spoken: names.map((name) => spokenName(name, nameStyle)).join(', '),
  };
}
