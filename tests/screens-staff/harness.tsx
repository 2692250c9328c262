/**
 * The page that tests/browser/staff.test.ts opens in a real browser: one staff in a box of a given size, with the app's
 * own colours and fonts.
 */
import { signal } from '@preact/signals';
import { render } from 'preact';
import { type Hands, itemOf, type ItemId } from '../../shared/music/deck';
import type { Hand } from '../../shared/music/fingering/types';
import { PARTS_OF_BEAT, type Score } from '../../shared/music/score';
import { scoreOf } from '../../shared/music/score-of';
import type { Grouping } from '../../shared/music/tempo';
import { Staff } from '../../src/parts/staff/staff';
import '../../src/styles/type.css';
import '../../src/styles/tokens.css';
import '../../src/styles/base.css';
import { computedPlans } from '../music/plans';

export interface Showing {
  /** In px. */
  readonly width: number;
  readonly height: number;
  readonly at?: number | null;
  readonly hands?: Hands;
  /** Places of each hand, in parts of a beat, that have been heard. */
  readonly heard?: Readonly<Record<Hand, readonly number[]>>;
  readonly from?: number;
  readonly to?: number;
}

export interface ItemShowing extends Showing {
  readonly items: readonly ItemId[];
  readonly grouping?: Grouping;
  readonly pedal?: boolean;
  readonly hasKeySignatures?: boolean;
}

/** What is seen of one sign or line: the ink of a sign is far smaller than its box, as the font's lines are very high. */
export interface Ink {
  /** The sign's character, or the name of the element. */
  readonly what: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

function inkOfSign(sign: SVGTextElement, measure: CanvasRenderingContext2D): Ink {
  const what = sign.textContent;
  const { fontSize, fontFamily } = getComputedStyle(sign);
  measure.font = `${fontSize} ${fontFamily}`;
  const size = measure.measureText(what);
  const { x, y } = sign.getStartPositionOfChar(0);
  const matrix = sign.getScreenCTM()!;
  const from = new DOMPoint(x - size.actualBoundingBoxLeft, y - size.actualBoundingBoxAscent);
  const to = new DOMPoint(x + size.actualBoundingBoxRight, y + size.actualBoundingBoxDescent);
  const [start, end] = [from.matrixTransform(matrix), to.matrixTransform(matrix)];
  return { what, left: start.x, top: start.y, right: end.x, bottom: end.y };
}

function inks(): readonly Ink[] {
  const measure = document.createElement('canvas').getContext('2d')!;
  // The transparent rectangles that the library puts over notes are not ink.
  const all = document.querySelectorAll<SVGGraphicsElement>(
    '#box text, #box path, #box rect:not([opacity="0"])',
  );
  return [...all].map((element) => {
    if (element instanceof SVGTextElement) return inkOfSign(element, measure);
    const { left, top, right, bottom } = element.getBoundingClientRect();
    return { what: element.tagName, left, top, right, bottom };
  });
}

const violations: string[] = [];
document.addEventListener('securitypolicyviolation', (event) => {
  violations.push(`${event.violatedDirective} ${event.sourceFile}:${event.lineNumber}`);
});

const fingeringOf = computedPlans();
/** The same showing gets the same score, as on a screen, where only the place changes. */
const scores = new Map<string, Score>();

type Written = Required<Pick<ItemShowing, 'items' | 'grouping' | 'pedal' | 'hasKeySignatures'>>;

function scoreOfItems({ items: ids, ...written }: Written): Score {
  const code = [...ids, ...Object.values(written)].join();
  const options = { title: 'An arpeggio', tempo: 240, ...written, fingeringOf };
  const score = scores.get(code) ?? scoreOf(ids.map(itemOf), options);
  scores.set(code, score);
  return score;
}

const heardPlaces = signal({ right: new Set<number>(), left: new Set<number>() });

function show(
  score: Score,
  { width, height, at = null, from, to, hands = 'together', heard }: Showing,
): void {
  heardPlaces.value = { right: new Set(heard?.right), left: new Set(heard?.left) };
  const part = {
    hands,
    heard: heardPlaces,
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
  };
  render(
    <div
      id="box"
      style={{ width: `${width}px`, height: `${height}px`, background: 'var(--sheet)' }}
    >
      <Staff score={score} at={at} description="up and down" {...part} />
    </div>,
    document.getElementById('app')!,
  );
}

window.staffHarness = {
  violations,
  inks,
  show,
  showItems: ({ items, grouping = 4, pedal = false, hasKeySignatures = false, ...showing }) =>
    show(scoreOfItems({ items, grouping, pedal, hasKeySignatures }), showing),
  beat: PARTS_OF_BEAT,
};

declare global {
  interface Window {
    staffHarness: {
      readonly violations: readonly string[];
      inks(): readonly Ink[];
      readonly beat: number;
      show(score: Score, showing: Showing): void;
      showItems(showing: ItemShowing): void;
    };
  }
}
