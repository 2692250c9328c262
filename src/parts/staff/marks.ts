/**
 * What stands around the notes of a staff: the 3 of triplets, accents, fingers, words, the corner that opens each new
 * position of the hand, octave signs. Right hand above, left hand below, each as close to its note as it may be.
 */
import type { Triplet } from '../../../shared/music/engraving/beams';
import { HELD } from '../../../shared/music/engraving/engraving';
import type { Hand } from '../../../shared/music/fingering/types';
import { add, addLine, addSign, addWord, round, SIGN, SPACE } from './drawing';
import type { DrawnNote, StaffNotes } from './notes';

/** Above (-1) or below (1): y grows downwards. */
type Side = -1 | 1;

/** How far each note reaches with what stands around it, from the staff's top line. */
export interface Outline {
  readonly top: number[];
  readonly bottom: number[];
}

const TOP_LINE = 0;
const BOTTOM_LINE = 4 * SPACE;
const GAP = 0.55 * SPACE;
const HALF_HEAD = SPACE / 2;
const ACCENT_HEIGHT = SPACE;
const FINGER_SCALE = 1.4;
const FINGER_HEIGHT = FINGER_SCALE * SPACE;
const CORNER_HEIGHT = 0.55 * SPACE;
const TUPLET_SCALE = 0.9;
const TUPLET_HEIGHT = TUPLET_SCALE * 1.5 * SPACE;
const WORD_HEIGHT = 2.1 * SPACE;
/** Of it below the line on which its letters stand. */
const WORD_DEPTH = 0.5 * SPACE;
const WORD_WIDTH = 9.5 * SPACE;
const OCTAVE_SCALE = 0.85;
const OCTAVE_HEIGHT = OCTAVE_SCALE * 1.85 * SPACE;
const OCTAVE_SIGNS = new Map([
  [2, { sign: SIGN.octavesAbove, width: 5.4 }],
  [1, { sign: SIGN.octaveAbove, width: 3.54 }],
  [-1, { sign: SIGN.octaveBelow, width: 3.18 }],
]);

const sideOf = (hand: Hand): Side => (hand === 'right' ? -1 : 1);

/** The x of the middle of a note's head. */
export const middleOf = ({ note }: DrawnNote): number =>
  note.getAbsoluteX() + note.getGlyphWidth() / 2;

/** The bare notes with their stems; call it when notes and beams have been formatted. */
export function outlineOf({ notes }: StaffNotes): Outline {
  const extents = notes.map(({ note }) => {
    const ys = note.getYs().flatMap((y) => [y - HALF_HEAD, y + HALF_HEAD]);
    if (note.isRest() || !note.hasStem()) return ys;
    const { topY, baseY } = note.getStemExtents();
    return [...ys, topY, baseY];
  });
  return {
    top: extents.map((ys) => Math.min(TOP_LINE, ...ys)),
    bottom: extents.map((ys) => Math.max(BOTTOM_LINE, ...ys)),
  };
}

/**
 * Takes the next free room of `height` beyond the notes `from` to `to`, and returns the y on which a sign stands there.
 */
function takeRoom(
  outline: Outline,
  side: Side,
  height: number,
  [from, to]: readonly [number, number],
) {
  const edges = side === -1 ? outline.top : outline.bottom;
  const span = edges.slice(from, to + 1);
  const edge = side === -1 ? Math.min(...span) - GAP - height : Math.max(...span) + GAP + height;
  edges.fill(edge, from, to + 1);
  return side === -1 ? edge + height : edge;
}

/** The figure over the stems or heads of a triplet, in a bracket where no beam says what belongs to it. */
function drawTriplet(
  parent: Element,
  drawn: StaffNotes,
  outline: Outline,
  { group, hasBracket }: Triplet,
): void {
  const [first, last] = [group[0]!, group.at(-1)!];
  const [start, end] = [drawn.notes[first]!, drawn.notes[last]!];
  const middle = group[Math.floor(group.length / 2)]!;
  const side = sideOfTriplet(group.map((i) => drawn.notes[i]!));
  const y = takeRoom(outline, side, TUPLET_HEIGHT, hasBracket ? [first, last] : [middle, middle]);
  const [left, right] = hasBracket
    ? [middleOf(start) - 0.8 * SPACE, middleOf(end) + 0.8 * SPACE]
    : [start.note.getStemX(), end.note.getStemX()];
  const x = (left + right) / 2;
  addSign(parent, SIGN.tuplet, x, y, { scale: TUPLET_SCALE, anchor: 'middle' });
  if (!hasBracket) return;
  const [line, foot] = [y - TUPLET_HEIGHT / 2, y - TUPLET_HEIGHT / 2 - side * 0.7 * SPACE];
  const [before, after] = [x - 0.9 * SPACE, x + 0.9 * SPACE].map(round);
  addLine(parent, `M${[left, foot, left, line].map(round).join(' ')}H${before}`);
  addLine(parent, `M${[right, foot, right, line].map(round).join(' ')}H${after}`);
}

/** Where the stems are; over rests alone, above. */
function sideOfTriplet(notes: readonly DrawnNote[]): Side {
  const sounding = notes.find(({ source }) => source.keys.length > 0);
  return sounding?.note.getStemDirection() === -1 ? 1 : -1;
}

/** The corner of a bracket over (or under) the first finger of a new position, open to what follows. */
function drawCorner(parent: Element, x: number, y: number, side: Side): void {
  const [left, right] = [x - 0.7 * SPACE, x + 0.8 * SPACE];
  const corner = [left, y - side * CORNER_HEIGHT, left, y, right, y].map(round);
  addLine(parent, `M${corner.join(' ')}`, 1.6);
}

/** Accent, fingers and corner of one note, in a group of their own, which is returned. */
function drawFingers(
  parent: Element,
  { staff, notes }: StaffNotes,
  outline: Outline,
  index: number,
): SVGGElement {
  const group = add(parent, 'g');
  const drawn = notes[index]!;
  const { keys, isAccented, change } = drawn.source;
  const side = sideOf(staff.hand);
  const x = middleOf(drawn);
  const here = [index, index] as const;
  if (isAccented) {
    const y = takeRoom(outline, side, ACCENT_HEIGHT, here);
    addSign(group, SIGN.accent, x, y, { anchor: 'middle' });
  }
  const outwards = side === -1 ? keys : keys.toReversed();
  for (const { finger } of outwards) {
    if (finger === null) continue;
    const y = takeRoom(outline, side, FINGER_HEIGHT, here);
    addSign(group, SIGN.finger(finger), x, y, { scale: FINGER_SCALE, anchor: 'middle' });
  }
  if (change) {
    const y = takeRoom(outline, side, CORNER_HEIGHT, here);
    drawCorner(group, x, side === -1 ? y - CORNER_HEIGHT : y, side);
  }
  return group;
}

/** The word over the first notes that are held into the next, outside their fingers. */
function drawHeldWord(parent: Element, { staff, notes }: StaffNotes, outline: Outline): void {
  const first = notes.findIndex(({ source }) => source.isFirstHeld);
  if (first === -1) return;
  const left = middleOf(notes[first]!) - 0.6 * SPACE;
  const last = notes.findLastIndex((drawn) => middleOf(drawn) < left + WORD_WIDTH);
  const y = takeRoom(outline, sideOf(staff.hand), WORD_HEIGHT, [first, last]);
  addWord(parent, HELD, left, y - WORD_DEPTH);
}

/** Octave signs with their dashed lines, over every run of notes that are written an octave off. */
function drawOctaves(parent: Element, { notes }: StaffNotes, outline: Outline): void {
  let start = 0;
  notes.forEach(({ source }, i) => {
    const { octaves } = source.reading;
    if (octaves !== notes[i - 1]?.source.reading.octaves) start = i;
    if (octaves === 0 || octaves === notes[i + 1]?.source.reading.octaves) return;
    const side = octaves > 0 ? -1 : 1;
    const y = takeRoom(outline, side, OCTAVE_HEIGHT, [start, i]);
    const { sign, width } = OCTAVE_SIGNS.get(octaves)!;
    const left = middleOf(notes[start]!) - SPACE;
    const lineStart = left + (width * OCTAVE_SCALE + 0.4) * SPACE;
    const right = Math.max(lineStart, middleOf(notes[i]!) + SPACE);
    addSign(parent, sign, left, y, { scale: OCTAVE_SCALE });
    const lineY = side === -1 ? y - OCTAVE_HEIGHT * 0.75 : y;
    const line = addLine(parent, `M${[lineStart, lineY, right, lineY].map(round).join(' ')}`);
    line.setAttribute('stroke-dasharray', '5 4');
    const hook = [right, lineY, right, lineY - side * 0.9 * SPACE].map(round);
    addLine(parent, `M${hook.join(' ')}`);
  });
}

/** Draws all of it; returns the group of each note, and enlarges the outline by what was drawn. */
export function drawMarks(
  parent: Element,
  drawn: StaffNotes,
  outline: Outline,
): readonly SVGGElement[] {
  for (const triplet of drawn.staff.triplets) {
    if (triplet.hasFigure) drawTriplet(parent, drawn, outline, triplet);
  }
  const groups = drawn.notes.map((_, i) => drawFingers(parent, drawn, outline, i));
  drawHeldWord(parent, drawn, outline);
  drawOctaves(parent, drawn, outline);
  return groups;
}
