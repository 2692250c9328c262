/**
 * A score as MusicXML 4.0, partwise, for notation programs: one piano part on two staves (W3C Music Notation Community
 * Group, MusicXML 4.0, element reference). Pitches, fingering, beams, ties, triplets, octave signs and pedal are
 * written; page layout is left to the program that opens it.
 */
import { PARTS_OF_BEAT, type Score, type ScoreNote } from '../music/score';
import { markOf } from '../music/tempo';
import { type BeatLook, type Clef, looksOf } from './musicxml-clefs';
import { type BarState, noteElements, STAFF, type StaffName } from './musicxml-note';
import { BAR, barOf, beatOf, endOf, type Piece, piecesOf } from './musicxml-pieces';
import { type Touch, touchesOf } from './pedal';
import { element, textElement } from './xml';

const HEAD =
  '<?xml version="1.0" encoding="UTF-8" standalone="no"?>\n' +
  '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">\n';
const PART = 'P1';
const INSTRUMENT = 'P1-I1';

/** One staff as it will be written, from the first bar to the last. */
interface Staff {
  readonly name: StaffName;
  readonly pieces: readonly Piece[];
  readonly looks: readonly BeatLook[];
  /** Of the whole part: written with the staff that is played, below both. */
  readonly touches: readonly Touch[];
}

const lengthOf = (notes: readonly ScoreNote[]): number =>
  notes.reduce((sum, { length }) => sum + length, 0);

/** A staff filled with rests up to the last barline. */
function staffOf(name: StaffName, score: Score, bars: number): Staff {
  const notes = score[name];
  const missing = bars * BAR - lengthOf(notes);
  const rest: ScoreNote = { keys: [], fingers: [], length: missing, change: null };
  const pieces = piecesOf(missing === 0 ? notes : [...notes, rest]);
  const usual: Clef = name === 'right' ? 'treble' : 'bass';
  const looks = looksOf(pieces, (bars * BAR) / PARTS_OF_BEAT, usual);
  const withPedal: StaffName = score.left.length > 0 ? 'left' : 'right';
  return { name, pieces, looks, touches: name === withPedal ? touchesOf(score) : [] };
}

const clefElement = (clef: Clef, staff: StaffName): string =>
  element(
    'clef',
    [
      textElement('sign', clef === 'treble' ? 'G' : 'F'),
      textElement('line', clef === 'treble' ? 2 : 4),
    ],
    { number: STAFF[staff] },
  );

/** A direction at the place reached, or some parts of a beat from there. */
const direction = (type: string, staff: number, placement: 'above' | 'below', offset = 0): string =>
  element(
    'direction',
    [
      element('direction-type', [type]),
      ...(offset === 0 ? [] : [textElement('offset', offset)]),
      textElement('staff', staff),
    ],
    { placement },
  );

function octaveSign(type: 'start' | 'stop', octaves: number, staff: StaffName): string {
  // MusicXML tells where the notes have moved on paper: down under an 8va.
  const moved = octaves > 0 ? 'down' : 'up';
  const sign = element('octave-shift', [], { type: type === 'start' ? moved : 'stop', size: 8 });
  return direction(sign, STAFF[staff], octaves > 0 ? 'above' : 'below');
}

const pedalSign = (type: 'start' | 'stop', offset: number): string =>
  direction(element('pedal', [], { type, line: 'no', sign: 'yes' }), STAFF.left, 'below', offset);

/** What stands around one piece: a new clef and signs that begin before it, signs that end after it. */
function around(staff: Staff, place: number): readonly [before: string[], after: string[]] {
  const { name, pieces, looks, touches } = staff;
  const piece = pieces[place]!;
  const lookAt = (other: Piece | undefined) => other && looks[beatOf(other)];
  const look = lookAt(piece)!;
  const last = lookAt(pieces[place - 1]);
  const next = lookAt(pieces[place + 1]);
  const before: string[] = [];
  const after: string[] = [];
  if (last && last.clef !== look.clef) {
    before.push(element('attributes', [clefElement(look.clef, name)]));
  }
  if (look.octaves !== 0 && look.octaves !== last?.octaves) {
    before.push(octaveSign('start', look.octaves, name));
  }
  if (look.octaves !== 0 && look.octaves !== next?.octaves) {
    after.push(octaveSign('stop', look.octaves, name));
  }
  const [from, to] = [piece.at, endOf(piece)];
  for (const { at, length } of touches) {
    const up = at + length;
    if (at >= from && at < to) before.push(pedalSign('start', at - from));
    if (up > from && up <= to) after.push(pedalSign('stop', up - to));
  }
  return [before, after];
}

function staffBar(staff: Staff, bar: number): readonly string[] {
  const state: BarState = new Map();
  return staff.pieces.flatMap((piece, place) => {
    if (barOf(piece) !== bar) return [];
    const [before, after] = around(staff, place);
    return [...before, ...noteElements(piece, staff.name, state), ...after];
  });
}

function opening({ tempo, grouping }: Score, staves: readonly Staff[]): readonly string[] {
  const attributes = element('attributes', [
    textElement('divisions', PARTS_OF_BEAT),
    element('key', [textElement('fifths', 0)]),
    element('time', [textElement('beats', 4), textElement('beat-type', 4)]),
    textElement('staves', staves.length),
    ...staves.map(({ name, looks }) => clefElement(looks[0]!.clef, name)),
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
