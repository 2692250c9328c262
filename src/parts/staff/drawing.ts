/** Small drawing in SVG, in units of which ten are a staff space, and with the font's signs. */
const SVG = 'http://www.w3.org/2000/svg';

export const SPACE = 10;
export const FONT = 'Arpeggiary Music';
/** The colour of the text around it. */
export const INK = 'currentColor';
/** The font is drawn so that four staff spaces are its size. */
const FONT_SIZE = 4 * SPACE;

const WORD_SIZE = 1.9 * SPACE;

/** Signs of the font, by their places in the standard music font layout (SMuFL). */
export const SIGN = {
  brace: '\uE000',
  trebleChange: '\uE07A',
  bassChange: '\uE07C',
  flat: '\uE260',
  natural: '\uE261',
  sharp: '\uE262',
  accent: '\uE4A0',
  octaveAbove: '\uE511',
  octavesAbove: '\uE515',
  octaveBelow: '\uE51C',
  pedalDown: '\uE650',
  finger: (finger: number): string => String.fromCharCode(0xed10 + finger),
  tuplet: '\uE883',
} as const;

/** Adds an SVG element to `parent` and returns it. */
export function add<Name extends keyof SVGElementTagNameMap>(
  parent: Element,
  name: Name,
  attributes: Readonly<Record<string, string | number>> = {},
): SVGElementTagNameMap[Name] {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  parent.append(element);
  return element;
}

interface SignOptions {
  /** 1 is the size of the staff's own signs. */
  readonly scale?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
}

/** Adds a sign of the font that stands on `y`. */
export function addSign(
  parent: Element,
  sign: string,
  x: number,
  y: number,
  { scale = 1, anchor = 'start' }: SignOptions = {},
): void {
  const text = add(parent, 'text', {
    x: round(x),
    y: round(y),
    'font-family': FONT,
    'font-size': FONT_SIZE * scale,
    'text-anchor': anchor,
    fill: INK,
    // The drawing as a whole has a stroke.
    stroke: 'none',
  });
  text.textContent = sign;
}

/** Adds a word in the page's serif, in italics, that stands on `y`. */
export function addWord(parent: Element, word: string, x: number, y: number): void {
  const text = add(parent, 'text', {
    class: 'word',
    x: round(x),
    y: round(y),
    'font-size': WORD_SIZE,
    fill: INK,
    stroke: 'none',
  });
  text.textContent = word;
}

export function addLine(parent: Element, path: string, width = 1): SVGPathElement {
  return add(parent, 'path', {
    d: path,
    fill: 'none',
    stroke: INK,
    'stroke-width': width,
  });
}

export const round = (value: number): number => Math.round(value * 100) / 100;
