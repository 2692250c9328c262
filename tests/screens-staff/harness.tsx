/**
 * The page that tests/browser/staff.test.ts opens in a real browser: one staff in a box of a given size, with the app's
 * own colours and fonts.
 */
import { render } from 'preact';
import { type Item, itemOf, type ItemId } from '../../shared/music/deck';
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
  readonly from?: number;
  readonly to?: number;
}

export interface ItemShowing extends Showing {
  readonly items: readonly ItemId[];
  readonly grouping?: Grouping;
  readonly pedal?: boolean;
}

const violations: string[] = [];
document.addEventListener('securitypolicyviolation', (event) => {
  violations.push(`${event.violatedDirective} ${event.sourceFile}:${event.lineNumber}`);
});

const fingeringOf = computedPlans();
const scoreOfItems = (items: readonly Item[], grouping: Grouping, pedal: boolean): Score =>
  scoreOf(items, { title: 'An arpeggio', tempo: 240, grouping, pedal, fingeringOf });

function show(score: Score, { width, height, at = null, from, to }: Showing): void {
  const part = {
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
  };
  render(
    <div id="box" style={{ width: `${width}px`, height: `${height}px`, background: 'var(--sheet)' }}>
      <Staff score={score} at={at} description="up and down" {...part} />
    </div>,
    document.getElementById('app')!,
  );
}

window.staffHarness = {
  violations,
  show,
  showItems: ({ items, grouping = 4, pedal = false, ...showing }) =>
    show(scoreOfItems(items.map(itemOf), grouping, pedal), showing),
  beat: PARTS_OF_BEAT,
};

declare global {
  interface Window {
    staffHarness: {
      readonly violations: readonly string[];
      readonly beat: number;
      show(score: Score, showing: Showing): void;
      showItems(showing: ItemShowing): void;
    };
  }
}
