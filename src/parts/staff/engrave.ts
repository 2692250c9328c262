/**
 * Draws a system of music: VexFlow for the staves and notes, the rest by marks.ts and frame.ts. Loaded only where a staff
 * is shown, as VexFlow is large. The font must be there before: its widths decide where the notes stand.
 */
import { type StaveNote, SVGContext } from 'vexflow/core';
import type { EngravedSystem } from '../../../shared/music/engraving/engraving';
import type { Hand } from '../../../shared/music/fingering/types';
import type { Clef } from '../../../shared/music/engraving/reading';
import { STAFF_GAP, SYSTEM_MARGIN } from '../../../shared/music/engraving/page';
import { add, addSign, INK, round, SIGN, SPACE } from './drawing';
import { clefEdge, endOf, format, joinAt, joinEdge, momentsOf } from './format';
import { drawEnd, drawFrame, drawJoin, drawPedals, type Spot } from './frame';
import { drawKey, keyWidth } from './key';
import { type Light, lightOf } from './lights';
import { drawMarks, middleOf, type Outline, outlineOf } from './marks';
import { drawNextKey, nextKeyWidth } from './next-key';
import { notesOf, type StaffNotes } from './notes';
import { drawTies } from './ties';

/** What belongs to a note: it is marked while the note sounds. */
export interface Mark {
  /** Places in parts of a beat, `to` not included. */
  readonly from: number;
  readonly to: number;
  /** Of whose hand it is; null for what is of both. */
  readonly hand: Hand | null;
  readonly elements: readonly Element[];
}

export interface DrawnSystem {
  readonly svg: SVGSVGElement;
  /** In staff spaces. */
  readonly height: number;
  readonly marks: readonly Mark[];
  readonly lights: readonly Light[];
}

/** A staff that has been drawn into its own group, which is still to be moved to its height. */
interface DrawnStaff {
  readonly drawn: StaffNotes;
  readonly outline: Outline;
  readonly group: SVGGElement;
  readonly marks: readonly Mark[];
  readonly lights: readonly Light[];
}

const STAFF_HEIGHT = 4 * SPACE;
/** The clefs of a change: they stand on the line of the G and of the F. */
const CLEFS = {
  treble: { sign: SIGN.trebleChange, y: 3 * SPACE },
  bass: { sign: SIGN.bassChange, y: SPACE },
};
const BRACE = 1.6 * SPACE;
/** Between the line of a join and the key after it. */
const AFTER_JOIN = 0.6 * SPACE;
/** Between the notes of one staff and of the other. */
const CLEARANCE = 0.9 * SPACE;
/** Notes that are nearer to each other than this must not meet, even if one is above the other. */
const NEIGHBOUR = 3 * SPACE;

function drawStaff(context: SVGContext, drawn: StaffNotes, system: EngravedSystem): DrawnStaff {
  const { stave, notes, beams } = drawn;
  const group = context.openGroup('staff');
  stave.drawWithStyle();
  for (const beam of beams) beam.postFormat();
  const { key, nextJoin } = system;
  drawKey(group, key, notes[0]!.source.reading.clef, stave.getNoteStartX() - keyWidth(key));
  if (nextKeyWidth(system) > 0) drawNextKey(context, group, drawn, nextJoin!.key);
  const groups = new Map<StaveNote, SVGGElement>();
  for (const { note } of notes) {
    groups.set(note, context.openGroup('place'));
    note.setContext(context).drawWithStyle();
    context.closeGroup();
  }
  for (const beam of beams) beam.setContext(context).drawWithStyle();
  for (const one of notes.filter(({ changesClef }) => changesClef)) {
    const { sign, y } = CLEFS[one.source.reading.clef];
    const edge = clefEdge(one, joinAt(system.joins, one.source.place));
    addSign(group, sign, edge, y, { anchor: 'end' });
  }
  drawTies(group, drawn);
  const outline = outlineOf(drawn);
  const fingers = drawMarks(group, drawn, outline);
  context.closeGroup();
  const marks = notes.map(({ source, note }, i): Mark => {
    const elements = [groups.get(note)!, fingers[i]!];
    const { hand } = drawn.staff;
    return { from: source.place, to: source.place + source.length, hand, elements };
  });
  const lights = notes.map((one) => lightOf(groups.get(one.note)!, drawn.staff.hand, one));
  return { drawn, outline, group, marks, lights };
}

const clefAt = ({ notes }: StaffNotes, place: number): Clef =>
  notes.findLast(({ source }) => source.place <= place)!.source.reading.clef;

/** The distance from the top line of one staff to that of the next. */
function distanceOf(upper: DrawnStaff, lower: DrawnStaff): number {
  const below = upper.drawn.notes.map(
    (note, i) => [middleOf(note), upper.outline.bottom[i]!] as const,
  );
  const above = lower.drawn.notes.map(
    (note, i) => [middleOf(note), lower.outline.top[i]!] as const,
  );
  const needs = below.flatMap(([x, bottom]) =>
    above
      .filter(([other]) => Math.abs(other - x) < NEIGHBOUR)
      .map(([, top]) => bottom - top + CLEARANCE),
  );
  return Math.max(STAFF_HEIGHT + STAFF_GAP * SPACE, ...needs);
}

/** The middles of the notes of all staves, and the end of the system. */
function spotsOf(staves: readonly StaffNotes[], right: number): readonly Spot[] {
  const moments = momentsOf(staves);
  const ends = staves.map(({ notes }) => endOf(notes.at(-1)!));
  const spots = moments.map(([place, [note]]): Spot => [place, middleOf(note!)]);
  return [...spots, [Math.max(...ends), right]];
}

/** Behind the notes of each moment a band, to be coloured while they sound: to be seen from further away than a note. */
function addBands(svg: SVGSVGElement, staves: readonly DrawnStaff[], height: number): Mark[] {
  const moments = momentsOf(staves.map(({ drawn }) => drawn));
  return moments.map(([from, [note]], i): Mark => {
    const band = add(svg, 'rect', {
      class: 'band',
      x: round(middleOf(note!) - 1.1 * SPACE),
      y: 0,
      width: 2.2 * SPACE,
      height: round(height),
      fill: 'none',
      stroke: 'none',
    });
    svg.prepend(band);
    const to = moments[i + 1]?.[0] ?? from + note!.source.length;
    return { from, to, hand: null, elements: [band] };
  });
}

/** Draws a system `width` staff spaces wide. */
export function drawSystem(system: EngravedSystem, width: number): DrawnSystem {
  const context = new SVGContext(document.createElement('div'));
  context.setFillStyle(INK).setStrokeStyle(INK);
  const svg = context.svg;
  const left = system.staves.length > 1 ? BRACE : 1;
  const right = width * SPACE - 1;
  const end = right - nextKeyWidth(system);
  const placed = system.staves.map((staff) => notesOf(staff, left, end - left));
  format(context, placed, system);
  const staves = placed.map((drawn) => drawStaff(context, drawn, system));

  const tops = [SYSTEM_MARGIN * SPACE - Math.min(...staves[0]!.outline.top)];
  staves.slice(1).forEach((staff, i) => tops.push(tops[i]! + distanceOf(staves[i]!, staff)));
  staves.forEach(({ group }, i) =>
    group.setAttribute('transform', `translate(0 ${round(tops[i]!)})`),
  );
  const [top, bottom] = [tops[0]!, tops.at(-1)! + STAFF_HEIGHT];
  drawFrame(svg, left, top, bottom, staves.length > 1);
  for (const [place, notes] of momentsOf(placed)) {
    const join = joinAt(system.joins, place);
    if (!join) continue;
    const edge = joinEdge(notes, join);
    drawJoin(svg, edge, top, bottom);
    for (const { group, drawn } of staves)
      drawKey(group, join.key, clefAt(drawn, place), edge + AFTER_JOIN);
  }
  if (system.nextJoin) drawJoin(svg, end, top, bottom);
  if (system.isEnd) drawEnd(svg, right, top, bottom);
  const lowest = tops.at(-1)! + Math.max(...staves.at(-1)!.outline.bottom);
  const foot = drawPedals(svg, system.touches, spotsOf(placed, end - SPACE), lowest);

  const height = foot + SYSTEM_MARGIN * SPACE;
  const bands = addBands(svg, staves, height);
  svg.setAttribute('viewBox', `0 0 ${width * SPACE} ${round(height)}`);
  return {
    svg,
    height: height / SPACE,
    marks: [...bands, ...staves.flatMap(({ marks }) => marks)],
    lights: staves.flatMap(({ lights }) => lights),
  };
}
