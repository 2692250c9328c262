/**
 * A score as MusicXML 4.0, partwise, for notation programs: one piano part on two staves (W3C Music Notation Community
 * Group, MusicXML 4.0, element reference). Pitches, fingering, beams, ties, triplets, octave signs and pedal are
 * written; page layout is left to the program that opens it.
 */
import { type Clef, type Reading, readingsOf } from '../music/engraving/reading';
import { fifthsAt } from '../music/engraving/signature';
import { type Touch, touchesOf } from '../music/pedal';
import { PARTS_OF_BEAT, type Score, type ScoreNote } from '../music/score';
import { markOf } from '../music/tempo';
import { type BarState, inKey, noteElements, STAFF, type StaffName } from './musicxml-note';
import { BAR, barOf, type BarPiece, barPiecesOf } from './musicxml-pieces';
import { clefElement, heldWord, keyElement, octaveSign, pedalSign } from './musicxml-signs';
import { element, textElement } from './xml';

const HEAD =
  '<?xml version="1.0" encoding="UTF-8" standalone="no"?>\n' +
  '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">\n';
const PART = 'P1';
const INSTRUMENT = 'P1-I1';

/** One staff as it will be written, from the first bar to the last. */
interface Staff {
  readonly name: StaffName;
  readonly pieces: readonly BarPiece[];
  /** The clef and octave sign of each piece. */
  readonly readings: readonly Reading[];
  readonly score: Score;
  /** Whether the changes of key, which hold for both staves, are written with this one. */
  readonly hasKeys: boolean;
  /** Of the whole part: written with the staff that is played, below both. */
  readonly touches: readonly Touch[];
}

const lengthOf = (notes: readonly ScoreNote[]): number =>
  notes.reduce((sum, { length }) => sum + length, 0);

/** No octave sign stands over the rests that fill the last bar, which begin at `end`. */
function readingsOfPieces(
  name: StaffName,
  pieces: readonly BarPiece[],
  end: number,
): readonly Reading[] {
  const usual: Clef = name === 'right' ? 'treble' : 'bass';
  const written = readingsOf(
    pieces.filter(({ place }) => place < end),
    name,
  );
  const filling: Reading = { clef: written.at(-1)?.clef ?? usual, octaves: 0 };
  return pieces.map((_, i) => written[i] ?? filling);
}

/** A staff filled with rests up to the last barline. */
function staffOf(name: StaffName, score: Score, bars: number): Staff {
  const notes = score[name];
  const end = lengthOf(notes);
  const missing = bars * BAR - end;
  const rest: ScoreNote = { keys: [], fingers: [], length: missing, change: null };
  const pieces = barPiecesOf(missing === 0 ? notes : [...notes, rest]);
  const readings = readingsOfPieces(name, pieces, end);
  const withKeys: StaffName = score.right.length > 0 ? 'right' : 'left';
  const withPedal: StaffName = score.left.length > 0 ? 'left' : 'right';
  const hasKeys = name === withKeys;
  return {
    name,
    pieces,
    readings,
    score,
    hasKeys,
    touches: name === withPedal ? touchesOf(score) : [],
  };
}

/** The key of the arpeggio that begins with a piece, where it is another than before. */
function newKey({ score, hasKeys }: Staff, { place }: BarPiece): readonly string[] {
  const join = score.joins.indexOf(place);
  if (!hasKeys || join === -1) return [];
  if (fifthsAt(score, place) === fifthsAt(score, place - 1)) return [];
  return [keyElement(score.keySignatures![join + 1]!)];
}

/** What stands around one piece: a new clef and signs that begin before it, signs that end after it. */
function around(staff: Staff, place: number): readonly [before: string[], after: string[]] {
  const { name, pieces, readings, touches } = staff;
  const piece = pieces[place]!;
  const [last, reading, next] = [readings[place - 1], readings[place]!, readings[place + 1]];
  const before: string[] = [];
  const after: string[] = [];
  const attributes = [
    ...newKey(staff, piece),
    ...(last && last.clef !== reading.clef ? [clefElement(reading.clef, name)] : []),
  ];
  if (attributes.length > 0) before.push(element('attributes', attributes));
  if (reading.octaves !== 0 && reading.octaves !== last?.octaves) {
    before.push(octaveSign('start', reading.octaves, name));
  }
  if (reading.octaves !== 0 && reading.octaves !== next?.octaves) {
    after.push(octaveSign('stop', reading.octaves, name));
  }
  if (pieces.findIndex(({ overlap }) => overlap) === place) before.push(heldWord(name));
  before.push(...pedalSigns(piece, touches));
  return [before, after];
}

/** Where the pedal goes down and comes up during a piece, in order of time. */
function pedalSigns({ place, length }: BarPiece, touches: readonly Touch[]): readonly string[] {
  const signs = touches.flatMap((touch) => [
    { type: 'start' as const, offset: touch.at - place },
    { type: 'stop' as const, offset: touch.at + touch.length - place },
  ]);
  return signs
    .filter(({ type, offset }) =>
      type === 'start' ? offset >= 0 && offset < length : offset > 0 && offset <= length,
    )
    .map(({ type, offset }) => pedalSign(type, offset));
}

function staffBar(staff: Staff, bar: number): readonly string[] {
  let state: BarState = { fifths: fifthsAt(staff.score, bar * BAR), said: new Map() };
  return staff.pieces.flatMap((piece, place) => {
    if (barOf(piece) !== bar) return [];
    const fifths = fifthsAt(staff.score, piece.place);
    if (fifths !== state.fifths) state = inKey(state, fifths);
    const [before, after] = around(staff, place);
    return [...before, ...noteElements(piece, staff.name, state), ...after];
  });
}

function opening(
  { tempo, grouping, keySignatures = [] }: Score,
  staves: readonly Staff[],
): readonly string[] {
  const attributes = element('attributes', [
    textElement('divisions', PARTS_OF_BEAT),
    keyElement(keySignatures[0] ?? null),
    element('time', [textElement('beats', 4), textElement('beat-type', 4)]),
    textElement('staves', staves.length),
    ...staves.map(({ name, readings }) => clefElement(readings[0]!.clef, name)),
  ]);
  const mark = markOf(tempo, grouping);
  const metronome = element('metronome', [
    textElement('beat-unit', 'quarter'),
    textElement('per-minute', mark),
  ]);
  const sounding = element(
    'direction',
    [
      element('direction-type', [metronome]),
      textElement('staff', STAFF.right),
      element('sound', [], { tempo: mark }),
    ],
    { placement: 'above' },
  );
  return [attributes, sounding];
}

function measure(score: Score, staves: readonly Staff[], bar: number): string {
  const backup = element('backup', [textElement('duration', BAR)]);
  const [right, left] = staves.map((staff) => staffBar(staff, bar));
  const lines = [...(bar === 0 ? opening(score, staves) : []), ...right!, backup, ...left!];
  return element('measure', ['\n', lines.join('\n'), '\n'], { number: bar + 1 });
}

const header = (title: string): readonly string[] => [
  element('work', [textElement('work-title', title)]),
  element('identification', [
    element('encoding', [
      textElement('software', 'Arpeggiary'),
      element('supports', [], { element: 'accidental', type: 'yes' }),
      element('supports', [], { element: 'beam', type: 'yes' }),
    ]),
  ]),
  element('part-list', [
    element(
      'score-part',
      [
        textElement('part-name', 'Piano'),
        element('score-instrument', [textElement('instrument-name', 'Piano')], { id: INSTRUMENT }),
        element(
          'midi-instrument',
          [textElement('midi-channel', 1), textElement('midi-program', 1)],
          {
            id: INSTRUMENT,
          },
        ),
      ],
      { id: PART },
    ),
  ]),
];

/**
 * A score as the text of a MusicXML file. Bars of four beats; what is left of the last, and a hand that doesn't play,
 * is filled with rests. Throws a RangeError for a length that has no note value.
 */
export function musicXml(score: Score): string {
  const bars = Math.max(1, Math.ceil(Math.max(lengthOf(score.right), lengthOf(score.left)) / BAR));
  const staves = [staffOf('right', score, bars), staffOf('left', score, bars)];
  const measures = Array.from({ length: bars }, (_, bar) => `${measure(score, staves, bar)}\n`);
  const part = element('part', ['\n', ...measures], { id: PART });
  const lines = [...header(score.title), part].flatMap((line) => [line, '\n']);
  return `${HEAD}${element('score-partwise', ['\n', ...lines], { version: '4.0' })}\n`;
}
