/** What stands on the staves beside the notes, as MusicXML (W3C, MusicXML 4.0, elements clef and direction). */
import { HELD } from '../music/engraving/engraving';
import type { Clef } from '../music/engraving/reading';
import type { KeySignature } from '../music/score';
import { STAFF, type StaffName } from './musicxml-note';
import { element, textElement } from './xml';

export const clefElement = (clef: Clef, staff: StaffName): string =>
  element(
    'clef',
    [
      textElement('sign', clef === 'treble' ? 'G' : 'F'),
      textElement('line', clef === 'treble' ? 2 : 4),
    ],
    { number: STAFF[staff] },
  );

/** Of both staves. No key is told as one without sharps and flats, of no mode. */
export const keyElement = (key: KeySignature | null): string =>
  element('key', [
    textElement('fifths', key?.fifths ?? 0),
    ...(key === null ? [] : [textElement('mode', key.mode)]),
  ]);

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

export function octaveSign(type: 'start' | 'stop', octaves: number, staff: StaffName): string {
  // MusicXML tells where the notes have moved on paper: down under an 8va.
  const moved = octaves > 0 ? 'down' : 'up';
  const size = 7 * Math.abs(octaves) + 1;
  const sign = element('octave-shift', [], { type: type === 'start' ? moved : 'stop', size });
  return direction(sign, STAFF[staff], octaves > 0 ? 'above' : 'below');
}

/** What the first note that is held into the next says of all that are. */
export const heldWord = (staff: StaffName): string =>
  direction(
    textElement('words', HELD, { 'font-style': 'italic' }),
    STAFF[staff],
    staff === 'right' ? 'above' : 'below',
  );

/** A bracket: a short touch has no room for "Ped." and an asterisk. Its ends stand where the foot moves. */
export const pedalSign = (type: 'start' | 'stop', offset: number): string =>
  direction(element('pedal', [], { type, line: 'yes', sign: 'no' }), STAFF.left, 'below', offset);
