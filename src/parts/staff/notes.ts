/** The staff itself by VexFlow: clefs, notes, accidentals, beams.  */
import {
  Accidental,
  Beam,
  Dot,
  Metrics,
  MetricsDefaults,
  Stave,
  StaveNote,
  Tuplet,
  Voice,
  VoiceMode,
} from 'vexflow/core';
import type { EngravedNote, EngravedStaff } from '../../../shared/music/engraving/engraving';
import { FONT, INK } from './drawing';
import { measureOnce } from './measure';

MetricsDefaults.fontFamily = FONT;
MetricsDefaults.Stem.strokeStyle = INK;
MetricsDefaults.Stave.strokeStyle = INK;
Metrics.clear();
measureOnce();

const ACCIDENTALS = {
  'double flat': 'bb',
  flat: 'b',
  natural: 'n',
  sharp: '#',
  'double sharp': '##',
} as const;
/** Where rests stand: in the middle, and the whole rest hangs from the line above it. */
const MIDDLE_LINE = { treble: 'b/4', bass: 'd/3' } as const;
const FOURTH_LINE = { treble: 'd/5', bass: 'f/3' } as const;
/** Beams as steep as they may be, as a share: wide leaps would slant them too much to be read. */
const STEEPEST = 0.12;

/** A note that stands at a place, for what is drawn around it. */
export interface DrawnNote {
  readonly source: EngravedNote;
  readonly note: StaveNote;
  /** Whether another clef than before stands before it, within the line. */
  readonly changesClef: boolean;
}

export interface StaffNotes {
  readonly staff: EngravedStaff;
  readonly stave: Stave;
  readonly voice: Voice;
  readonly notes: readonly DrawnNote[];
  readonly beams: readonly Beam[];
}

function noteOf(source: EngravedNote): StaveNote {
  const { keys, value, reading, isSilent } = source;
  const isRest = keys.length === 0;
  const note = new StaveNote({
    keys: isRest
      ? [(value.share === 1 ? FOURTH_LINE : MIDDLE_LINE)[reading.clef]]
      : keys.map(({ written }) => written.toLowerCase().replace(/(-?\d+)$/, '/$1')),
    duration: String(value.share),
    dots: value.isDotted ? 1 : 0,
    clef: reading.clef,
    autoStem: true,
    ...(isRest ? { type: 'r' } : isSilent ? { type: 'x' } : {}),
  });
  keys.forEach(({ accidental }, i) => {
    if (accidental) note.addModifier(new Accidental(ACCIDENTALS[accidental]), i);
  });
  if (value.isDotted) Dot.buildAndAttach([note], { all: true });
  return note;
}

function beamOf(notes: readonly DrawnNote[], indices: readonly number[]): Beam {
  const beam = new Beam(
    indices.map((i) => notes[i]!.note),
    true,
  );
  Object.assign(beam.renderOptions, { maxSlope: STEEPEST, minSlope: -STEEPEST });
  return beam;
}

/** Five lines from `x` on; the top one lies at y = 0. */
export const linesAt = (x: number, width: number): Stave =>
  new Stave(x, 0, width, { spaceAboveStaffLn: 0, leftBar: false, rightBar: false });

/** The notes of one staff, from `x` on and `width` wide, not yet placed. */
export function notesOf(staff: EngravedStaff, x: number, width: number): StaffNotes {
  const stave = linesAt(x, width);
  stave.setDefaultLedgerLineStyle({ strokeStyle: INK, lineWidth: 1.6 });
  stave.addClef(staff.notes[0]!.reading.clef);
  if (staff.nextClef) stave.addEndClef(staff.nextClef, 'small');
  const notes = staff.notes.map((source, i): DrawnNote => {
    const before = staff.notes[i - 1]?.reading.clef ?? source.reading.clef;
    return { source, note: noteOf(source), changesClef: before !== source.reading.clef };
  });
  for (const { group } of staff.triplets) {
    // eslint-disable-next-line no-new
    new Tuplet(
      group.map((i) => notes[i]!.note),
      { numNotes: 3, notesOccupied: 2 },
    );
  }
  const beams = staff.beams.map((group) => beamOf(notes, group));
  const voice = new Voice().setMode(VoiceMode.SOFT).addTickables(notes.map(({ note }) => note));
  return { staff, stave, voice, notes, beams };
}
