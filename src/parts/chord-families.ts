/** The chords as examinations name them together. */
import { CHORD_IDS, chordOf, type ChordId } from '../../shared/music/chords';

export const FAMILIES: readonly (readonly [string, readonly ChordId[]])[] = [
  ['triads, root position', ['major-53', 'minor-53']],
  ['triads, first inversion', ['major-6', 'minor-6']],
  ['triads, second inversion', ['major-64', 'minor-64']],
  ['dominant sevenths, root position', ['dominant-7']],
  ['dominant sevenths, inversions', ['dominant-65', 'dominant-43', 'dominant-42']],
  ['diminished sevenths', ['diminished-7']],
];

/** "triads, root position; diminished sevenths"; a part of a family chord by chord: "major 5/3". */
export const chordsText = (chords: readonly ChordId[]): string =>
  chords.length === CHORD_IDS.length
    ? 'all eleven chords'
    : FAMILIES.flatMap(([name, family]) => {
        const some = family.filter((chord) => chords.includes(chord));
        return some.length === family.length ? [name] : some.map((one) => chordOf(one).shortName);
      }).join('; ');
