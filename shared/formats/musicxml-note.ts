/** One note, chord or rest as MusicXML (W3C, MusicXML 4.0, elements note and notations). */
import { isRest } from '../music/engraving/placed';
import { alterInKey } from '../music/engraving/signature';
import { notePartsOf, type NoteName } from '../music/theory';
import { BAR, type BarPiece } from './musicxml-pieces';
import { element, textElement } from './xml';

/** The staves of a piano part, and MusicXML's numbers for them; each has one voice, of the same number. */
export const STAFF = { right: 1, left: 2 } as const;
export type StaffName = keyof typeof STAFF;

const ACCIDENTALS: Readonly<Record<number, string>> = {
  [-2]: 'flat-flat',
  [-1]: 'flat',
  0: 'natural',
  1: 'sharp',
  2: 'double-sharp',
};

/** By the share of a whole note. */
const TYPES = { 1: 'whole', 2: 'half', 4: 'quarter', 8: 'eighth', 16: '16th', 32: '32nd' } as const;

/** What the notes of one staff have said of their bar so far. */
export interface BarState {
  /** Of the key in force: sharps or, negative, flats. */
  readonly fifths: number;
  /** Accidentals by letter and octave; null where one was said in another key, so that the next is printed for certain. */
  readonly said: Map<string, number | null>;
}

/** The same bar after a change of key. */
export const inKey = ({ said }: BarState, fifths: number): BarState => ({
  fifths,
  said: new Map([...said.keys()].map((line) => [line, null])),
});

/** The sign that a note needs in its bar, which from then on holds; none where the bar already says it. */
function accidentalsFor(name: NoteName, { said, fifths }: BarState): readonly string[] {
  const { letter, alter, octave } = notePartsOf(name);
  const line = `${letter}${octave}`;
  const inForce = said.has(line) ? said.get(line)! : alterInKey(name, fifths);
  if (inForce === alter) return [];
  said.set(line, alter);
  return [textElement('accidental', ACCIDENTALS[alter]!)];
}

function pitch(name: NoteName): string {
  const { letter, alter, octave } = notePartsOf(name);
  return element('pitch', [
    textElement('step', letter),
    ...(alter === 0 ? [] : [textElement('alter', alter)]),
    textElement('octave', octave!),
  ]);
}

const ties = ({ isTiedBack, isTiedOn }: BarPiece, name: 'tie' | 'tied'): readonly string[] => [
  ...(isTiedBack ? [element(name, [], { type: 'stop' })] : []),
  ...(isTiedOn ? [element(name, [], { type: 'start' })] : []),
];

/** A tie that leads to no note: the key is held into the next. */
const held = ({ overlap }: BarPiece): readonly string[] =>
  overlap ? [element('tied', [], { type: 'let-ring' })] : [];

function tripletEnds({ startsTriplet, endsTriplet }: BarPiece): readonly string[] {
  const bracket = startsTriplet === 'bracket' ? 'yes' : 'no';
  return [
    ...(startsTriplet ? [element('tuplet', [], { type: 'start', bracket })] : []),
    ...(endsTriplet ? [element('tuplet', [], { type: 'stop' })] : []),
  ];
}

/** What is written about one key of a chord: `place` 0 is the lowest, and stands for the chord as a whole. */
function notations(piece: BarPiece, place: number, staff: StaffName): readonly string[] {
  const finger = piece.fingers[place] ?? null;
  const placement = staff === 'right' ? 'above' : 'below';
  const accent = piece.isAccented ? [element('articulations', [element('accent')])] : [];
  const ofChord = [...tripletEnds(piece), ...accent];
  const all = [
    ...ties(piece, 'tied'),
    ...held(piece),
    ...(place === 0 ? ofChord : []),
    ...(finger === null
      ? []
      : [element('technical', [textElement('fingering', finger, { placement })])]),
  ];
  return all.length === 0 ? [] : [element('notations', all)];
}

const triplet = (): string =>
  element('time-modification', [textElement('actual-notes', 3), textElement('normal-notes', 2)]);

/** From <duration> to <notations>, in the order that the schema demands. */
function body(piece: BarPiece, place: number, staff: StaffName, accidental: readonly string[]) {
  const { length, value, isSilent } = piece;
  const beams = place === 0 ? piece.beams : [];
  return [
    textElement('duration', length),
    ...ties(piece, 'tie'),
    textElement('voice', STAFF[staff]),
    textElement('type', TYPES[value.share]),
    ...(value.isDotted ? [element('dot')] : []),
    ...accidental,
    ...(value.isTriplet ? [triplet()] : []),
    ...(isSilent ? [textElement('notehead', 'x')] : []),
    textElement('staff', STAFF[staff]),
    ...beams.map((beam, level) => textElement('beam', beam, { number: level + 1 })),
    ...notations(piece, place, staff),
  ];
}

/** The notes of a piece, one element a key; `state` is its bar's and is brought up to date. */
export function noteElements(
  piece: BarPiece,
  staff: StaffName,
  state: BarState,
): readonly string[] {
  const { keys, length, isTiedBack, isSilent } = piece;
  if (isRest(piece)) {
    const isWholeBar = length === BAR;
    return [
      element('note', [
        element('rest', [], isWholeBar ? { measure: 'yes' } : {}),
        ...body(piece, 0, staff, []),
      ]),
    ];
  }
  return keys.map(({ name }, place) => {
    // A tie carries its accidental over the barline, for this note only.
    const accidental = isTiedBack ? [] : accidentalsFor(name, state);
    const head = [...(place === 0 ? [] : [element('chord')]), pitch(name)];
    // Loudness in per cent of forte: players that heed it leave a silent key silent.
    const loudness = isSilent ? { dynamics: 0 } : {};
    return element('note', [...head, ...body(piece, place, staff, accidental)], loudness);
  });
}
