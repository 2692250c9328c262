/** Ties: from a note to what is left of it, and open ones on what is held until after the next note has begun. */
import { add, INK, round, SPACE } from './drawing';
import { leftOf } from './format';
import type { DrawnNote, StaffNotes } from './notes';

const GAP = 0.25 * SPACE;
/** Of an open tie, where there is room. */
const OPEN = 2.2 * SPACE;
const OPEN_AT_LEAST = 1.3 * SPACE;
const OFF_HEAD = 0.55 * SPACE;
const THICKNESS = 0.2 * SPACE;

/** Two curves with ink between them, thickest in the middle; `side` is -1 above the heads, 1 below. */
function drawTie(parent: Element, from: number, to: number, y: number, side: number): void {
  const start = round(y + side * OFF_HEAD);
  const depth = Math.min(1.1 * SPACE, 0.35 * SPACE + (to - from) / 8);
  const [quarter, inner] = [(to - from) / 4, start + side * depth];
  const outer = inner + side * THICKNESS;
  const curve = (first: number, second: number, end: number, height: number): string =>
    `C${[first, height, second, height, end, start].map(round).join(' ')}`;
  const there = curve(from + quarter, to - quarter, to, outer);
  const back = curve(to - quarter, from + quarter, from, inner);
  add(parent, 'path', { d: `M${round(from)} ${start}${there}${back}Z`, fill: INK, stroke: 'none' });
}

const rightEdge = ({ note }: DrawnNote): number => note.getAbsoluteX() + note.getGlyphWidth();

/** Away from the stem; in a chord the upper half above and the lower half below. */
function sideOf({ note }: DrawnNote, key: number): number {
  const count = note.getKeys().length;
  if (count === 1) return note.getStemDirection() === 1 ? 1 : -1;
  return key < count / 2 ? 1 : -1;
}

export function drawTies(parent: Element, { notes }: StaffNotes): void {
  notes.forEach((drawn, i) => {
    const { isTiedOn, overlap } = drawn.source;
    if (!isTiedOn && !overlap) return;
    const from = rightEdge(drawn) + GAP;
    const next = notes[i + 1];
    const room = next ? next.note.getAbsoluteX() - leftOf(next) - GAP : from + OPEN;
    const to = isTiedOn ? room : Math.max(from + OPEN_AT_LEAST, Math.min(from + OPEN, room));
    drawn.note.getYs().forEach((y, key) => drawTie(parent, from, to, y, sideOf(drawn, key)));
  });
}
