/** What goes through all staves of a system: brace, lines, pedal. */
import { add, addLine, addSign, INK, round, SIGN, SPACE } from './drawing';
import { middleOf } from './marks';
import type { StaffNotes } from './notes';

const THIN = 1.3;
const THICK = 0.5 * SPACE;
/** The brace of the font is one font size high, and its standing place is its foot. */
const BRACE_HEIGHT = 4 * SPACE;
const BRACE_WIDENING = 2.2;
const PEDAL_SCALE = 0.75;
const PEDAL_HEIGHT = PEDAL_SCALE * 2.2 * SPACE;
const PEDAL_WIDTH = PEDAL_SCALE * 4.1 * SPACE;

const upright = (x: number, top: number, bottom: number): string =>
  `M${round(x)} ${round(top)}V${round(bottom)}`;

/** The beginning of a system: the brace and the line that tie two staves together. */
export function drawFrame(
  svg: Element,
  x: number,
  top: number,
  bottom: number,
  isGrand: boolean,
): void {
  if (!isGrand) return;
  addLine(svg, upright(x, top, bottom), THIN);
  const group = add(svg, 'g', {
    transform: `translate(${x - 0.3 * SPACE} ${round(bottom)}) scale(${BRACE_WIDENING} ${round((bottom - top) / BRACE_HEIGHT)})`,
  });
  addSign(group, SIGN.brace, 0, 0, { anchor: 'end' });
}

/** The thin line before the first note of the next arpeggio of a round. */
export function drawJoin(svg: Element, x: number, top: number, bottom: number): void {
  addLine(svg, upright(x, top, bottom), THIN);
}

/** The thin and the thick line at the end of a score. */
export function drawEnd(svg: Element, right: number, top: number, bottom: number): void {
  addLine(svg, upright(right - THICK - 0.4 * SPACE, top, bottom), THIN);
  const height = round(bottom - top);
  add(svg, 'rect', {
    x: round(right - THICK),
    y: round(top),
    width: THICK,
    height,
    fill: INK,
    stroke: 'none',
  });
}

/**
 * Short touches of the pedal below the lowest staff, down with a note and up before the next. `lowest` is the y of the
 * lowest thing above it, `right` the x of the end of the system. Returns the y of the lowest thing drawn so far.
 */
export function drawPedals(
  svg: Element,
  staves: readonly StaffNotes[],
  lowest: number,
  right: number,
): number {
  const touches = new Map<number, readonly [from: number, to: number]>();
  for (const { notes } of staves) {
    notes.forEach((drawn, i) => {
      if (!drawn.source.hasPedal) return;
      const next = notes[i + 1];
      const end = next ? middleOf(next) - 1.2 * SPACE : right - 2 * SPACE;
      touches.set(drawn.source.place, [middleOf(drawn) - 0.6 * SPACE, end]);
    });
  }
  if (touches.size === 0) return lowest;
  const y = lowest + 0.6 * SPACE + PEDAL_HEIGHT;
  const places = [...touches].toSorted(([a], [b]) => a - b).map(([, touch]) => touch);
  places.forEach(([from, to], i) => {
    // The word once a system, and then only the brackets, as there is no room for a word at every change.
    if (i === 0) addSign(svg, SIGN.pedalDown, from - PEDAL_WIDTH - 2, y, { scale: PEDAL_SCALE });
    const [top, foot] = [round(y - SPACE), round(y)];
    addLine(svg, `M${round(from)} ${top}V${foot}H${round(to)}V${top}`, THIN);
  });
  return y;
}
