/** The aims of the lab, what was measured, and whether they are met. */
import { type Book, cellText, ratioOf, there } from './book';
import { type Cell, CELLS } from './jobs';
import { FAMILIES, type FamilyName } from './learner';
import type { PlannerName } from './planners';
import type { Outcome } from './student-life';
import { percent, table } from './table';

const fewer = (ratio: number | null): string => {
  if (ratio === null) return 'nobody there';
  return ratio <= 1 ? `${percent(1 - ratio)} fewer` : `${percent(ratio - 1)} more`;
};
const met = (isMet: boolean): string => (isMet ? 'yes' : '**no**');

const UNEVEN: Cell = { group: 'uneven', minutes: 12 };

/** Days of the app, or of the best in hindsight, as a share of a way's: families whose students it brings there. */
class Comparison {
  constructor(
    readonly book: Book,
    readonly cell: Cell,
    readonly other: PlannerName,
    readonly ours: 'app' | 'best' = 'app',
  ) {}

  #pairs(family: FamilyName): readonly (readonly [Outcome, Outcome])[] {
    const { book, cell, other, ours } = this;
    const of = ours === 'best' ? book.best(family, cell) : book.outcomes(family, cell, 'app');
    return there(of, book.outcomes(family, cell, other));
  }

  get ratios(): readonly (number | null)[] {
    return FAMILIES.map((family) => ratioOf(this.#pairs(family)));
  }

  /** All families taken together. */
  get ratio(): number | null {
    return ratioOf(FAMILIES.flatMap((family) => this.#pairs(family)));
  }

  /** That each family there is at most this. */
  isAtMost(most: number): boolean {
    return this.ratios.every((ratio) => ratio === null || ratio <= most);
  }

  get text(): string {
    return this.ratios.map(fewer).join('; ');
  }
}

/** A row of the aims on days: held against the way by ear, with the stricter comparison beside it. */
function dayAim(
  book: Book,
  [aim, cell]: readonly [string, Cell],
  ways: { readonly byEar: PlannerName; readonly given: PlannerName },
  most: number,
): readonly string[] {
  const byEar = new Comparison(book, cell, ways.byEar);
  const given = new Comparison(book, cell, ways.given);
  const best = new Comparison(book, cell, ways.byEar, 'best');
  const strict = `${given.text}: ${met(given.isAtMost(most))}`;
  return [aim, byEar.text, met(byEar.isAtMost(most)), strict, best.text];
}

export function dayAimTable(book: Book): string {
  const rotation = { byEar: 'stairBack', given: 'back' } as const;
  const all = new Comparison(book, UNEVEN, rotation.byEar);
  const given = new Comparison(book, UNEVEN, rotation.given);
  const best = new Comparison(book, UNEVEN, rotation.byEar, 'best');
  const isQuarter = ({ ratio }: Comparison): boolean => ratio !== null && ratio <= 0.75;
  const rows = [
    ...CELLS.map((cell) =>
      dayAim(
        book,
        [`against one note a day, ${cellText(cell)}: at least 40 % fewer in each family`, cell],
        { byEar: 'stairDay', given: 'day' },
        0.6,
      ),
    ),
    [
      `against rotation with look-back, ${cellText(UNEVEN)}: at least 25 % fewer together`,
      fewer(all.ratio),
      met(isQuarter(all)),
      `${fewer(given.ratio)}: ${met(isQuarter(given))}`,
      fewer(best.ratio),
    ],
    dayAim(book, ['the same: in no family more than 5 % slower', UNEVEN], rotation, 1.05),
  ];
  const measured = `measured (${FAMILIES.join('; ')})`;
  const head = ['aim, in days', measured, 'met', "given the app's tempi", 'best in hindsight'];
  return table(head, rows);
}

export function calibrationAimTable(book: Book): string {
  const row = (aim: string, key: 'atTarget' | 'nextRun', most: number): readonly string[] => {
    const errors = FAMILIES.map((family) => book.calibration(family, key).error);
    return [
      aim,
      errors.map((error) => error.toFixed(3)).join('; '),
      met(Math.max(...errors) <= most),
    ];
  };
  return table(
    ['aim, in calibration', `measured (${FAMILIES.join('; ')})`, 'met'],
    [
      row('error at target at most 0.04 in each family', 'atTarget', 0.04),
      row('error of the next run at most 0.06', 'nextRun', 0.06),
    ],
  );
}
