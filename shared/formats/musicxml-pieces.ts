/** The notes of a hand in bars, with the beams and triplets that MusicXML tells note by note. */
import { beamsOf, type Group, tripletsOf } from '../music/engraving/beams';
import { type Piece, piecesOf } from '../music/engraving/pieces';
import { inPlace } from '../music/engraving/placed';
import { beamCount, WHOLE } from '../music/engraving/value';
import type { ScoreNote } from '../music/score';

/** Bars of four crotchets. */
export const BAR = WHOLE;

export const barOf = ({ place }: Piece): number => Math.floor(place / BAR);

export type Beam = 'begin' | 'continue' | 'end' | 'forward hook' | 'backward hook';

export interface BarPiece extends Piece {
  /** First beam first; none for a note on its own. */
  readonly beams: readonly Beam[];
  /** How the triplet that begins here is told: by a bracket, or by its beam alone. */
  readonly startsTriplet: 'bracket' | 'beam' | null;
  readonly endsTriplet: boolean;
}

/** The beams of one note of a beamed group, given how many each note has. */
function beamsIn(counts: readonly number[], place: number): readonly Beam[] {
  return Array.from({ length: counts[place]! }, (_, level) => {
    const goesBack = (counts[place - 1] ?? 0) > level;
    const goesOn = (counts[place + 1] ?? 0) > level;
    if (goesBack) return goesOn ? 'continue' : 'end';
    if (goesOn) return 'begin';
    return place === 0 ? 'forward hook' : 'backward hook';
  });
}

/** Each group by the index of each of its pieces. */
const byMember = <Of>(all: readonly Of[], groupOf: (one: Of) => Group): ReadonlyMap<number, Of> =>
  new Map(all.flatMap((one) => groupOf(one).map((i) => [i, one] as const)));

/**
 * The notes of one hand as they are written, one after the other from the beginning. Throws a RangeError for a length
 * that has no note value.
 */
export function barPiecesOf(notes: readonly ScoreNote[]): readonly BarPiece[] {
  const pieces = piecesOf(inPlace(notes), BAR);
  const beams = byMember(beamsOf(pieces), (group) => group);
  const triplets = byMember(tripletsOf(pieces), ({ group }) => group);
  return pieces.map((piece, i): BarPiece => {
    const beam = beams.get(i) ?? [];
    const triplet = triplets.get(i);
    const counts = beam.map((member) => beamCount(pieces[member]!.value));
    return {
      ...piece,
      beams: beam.length === 0 ? [] : beamsIn(counts, beam.indexOf(i)),
      startsTriplet: triplet?.group[0] !== i ? null : triplet.hasBracket ? 'bracket' : 'beam',
      endsTriplet: triplet?.group.at(-1) === i,
    };
  });
}
