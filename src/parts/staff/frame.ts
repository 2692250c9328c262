/** What goes through all staves of a system: brace, lines, pedal. */
import type { Touch } from '../../../shared/music/pedal';
import { add, addLine, addSign, INK, round, SIGN, SPACE } from './drawing';

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

/** A place in parts of a beat and its x. */
export type Spot = readonly [place: number, x: number];

/** The x of any place, in proportion between those of two notes; `spots` are in order, the last is the end of the system. */
function xAt(spots: readonly Spot[], place: number): number {
  const next = spots.findIndex(([other]) => other > place);
  if (next === 0) return spots[0]![1];
  if (next === -1) return spots.at(-1)![1];
  const [[before, left], [after, right]] = [spots[next - 1]!, spots[next]!];
  return left + ((place - before) / (after - before)) * (right - left);
}

/**
 * Short touches of the pedal below the lowest staff, from where it goes down to where it comes up; at the edge of a
 * system the bracket stays open. `lowest` is the y of the lowest thing above it. Returns the y of the lowest thing drawn
 * so far.
 */
export function drawPedals(
  svg: Element,
  touches: readonly Touch[],
  spots: readonly Spot[],
  lowest: number,
): number {
  if (touches.length === 0) return lowest;
  const y = lowest + 0.6 * SPACE + PEDAL_HEIGHT;
  const [start, end] = [spots[0]![0], spots.at(-1)![0]];
  touches.forEach(({ at, length }, i) => {
    const [from, to] = [xAt(spots, at), xAt(spots, at + length)];
    // The word once a system, and then only the brackets, as there is no room for a word at every change.
    if (i === 0) {
      const x = Math.max(0, from - PEDAL_WIDTH - 2);
      addSign(svg, SIGN.pedalDown, x, y, { scale: PEDAL_SCALE });
    }
    const [top, foot] = [round(y - SPACE), round(y)];
    const down = at < start ? `M${round(from)} ${foot}` : `M${round(from)} ${top}V${foot}`;
    addLine(svg, `${down}H${round(to)}${at + length > end ? '' : `V${top}`}`, THIN);
  });
  return y;
}
