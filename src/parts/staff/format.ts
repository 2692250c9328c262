/** Gives the notes of a system their places from left to right, in all its staves together. */
import { Formatter, Metrics, type SVGContext } from 'vexflow/core';
import type { EngravedSystem, Join } from '../../../shared/music/engraving/engraving';
import { groupBy } from '../../../shared/music/engraving/placed';
import { SPACE } from './drawing';
import { keyWidth } from './key';
import type { DrawnNote, StaffNotes } from './notes';
import { type Spot, spread } from './spacing';

/** A clef that changes within the line, and the line before the next arpeggio, each with the space around it. */
const CLEF = 2.6 * SPACE;
const JOIN = 1.5 * SPACE;
/** Of the line from what follows it. */
const BEFORE_JOIN = 0.7 * SPACE;
const AFTER_CLEF = 0.5 * SPACE;
const AFTER_FIRST_CLEF = 0.8 * SPACE;
const END_LINES = 1.4 * SPACE;

/** How far accidentals and heads stand out to the left of a note. */
export function leftOf({ note }: DrawnNote): number {
  const { modLeftPx, leftDisplacedHeadPx } = note.getMetrics();
  return modLeftPx + leftDisplacedHeadPx;
}

function rightOf({ note }: DrawnNote): number {
  const { notePx, modRightPx, rightDisplacedHeadPx } = note.getMetrics();
  return notePx + modRightPx + rightDisplacedHeadPx;
}

/** The x of the right edge of the clef that changes before a note. */
export const clefEdge = (drawn: DrawnNote, join: Join | undefined): number =>
  drawn.note.getAbsoluteX() - leftOf(drawn) - joinWidth(join) - AFTER_CLEF;

/** The x of the thin line before the notes of one moment; what follows it is the key, if it changes. */
export const joinEdge = (notes: readonly DrawnNote[], { key }: Join): number =>
  Math.min(...notes.map((drawn) => drawn.note.getAbsoluteX() - leftOf(drawn))) -
  BEFORE_JOIN -
  keyWidth(key);

const joinWidth = (join: Join | undefined): number => (join ? JOIN + keyWidth(join.key) : 0);

function spotOf(notes: readonly DrawnNote[], join: Join | undefined, length: number): Spot {
  const clef = notes.some(({ changesClef }) => changesClef) ? CLEF : 0;
  return {
    left: Math.max(...notes.map(leftOf)) + clef + joinWidth(join),
    right: Math.max(...notes.map(rightOf)),
    length,
  };
}

/** All notes by the places at which they begin, in order. */
export function momentsOf(
  staves: readonly StaffNotes[],
): readonly (readonly [place: number, notes: readonly DrawnNote[]])[] {
  const notes = staves.flatMap((staff) => staff.notes);
  const moments = groupBy(notes, ({ source }) => source.place);
  return [...moments].toSorted(([a], [b]) => a - b);
}

export function format(
  context: SVGContext,
  staves: readonly StaffNotes[],
  { key, joins, isEnd }: EngravedSystem,
): void {
  const clefEnd = Math.max(...staves.map(({ stave }) => stave.getNoteStartX()));
  const start = clefEnd + keyWidth(key);
  const end = Math.min(...staves.map(({ stave }) => stave.getNoteEndX()));
  const formatter = new Formatter();
  for (const { stave, voice } of staves) {
    stave.setNoteStartX(start).setContext(context);
    for (const tickable of voice.getTickables()) tickable.setStave(stave);
    formatter.joinVoices([voice]);
  }
  // Only for the widths of accidentals and heads: how the library spreads notes depends on too much.
  formatter.format(staves.map(({ voice }) => voice));

  const moments = momentsOf(staves);
  const last = Math.max(...staves.map(({ notes }) => endOf(notes.at(-1)!)));
  const spots = moments.map(([place, notes], i) => {
    const next = moments[i + 1]?.[0] ?? last;
    return spotOf(notes, joinAt(joins, place), next - place);
  });
  const room = end - start - AFTER_FIRST_CLEF - (isEnd ? END_LINES : 0);
  const padding = Metrics.get('Stave.padding') - AFTER_FIRST_CLEF;
  const places = spread(spots, room);
  moments.forEach(([, notes], i) => {
    for (const { note } of notes) note.checkTickContext().setX(places[i]! - padding);
  });
}

export const joinAt = (joins: readonly Join[], place: number): Join | undefined =>
  joins.find((join) => join.place === place);

/** Parts of a beat from the beginning of the score. */
export const endOf = ({ source }: DrawnNote): number => source.place + source.length;
