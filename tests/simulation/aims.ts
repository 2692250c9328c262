/** The aims of the lab, what was measured, and whether they are met. */
import { type Book, cellText, meanDays } from './book';
import { type Cell, CELLS } from './jobs';
import { FAMILIES } from './learner';
import type { PlannerName } from './planners';
import { percent, table } from './table';

const fewer = (ratio: number): string =>
  ratio <= 1 ? `${percent(1 - ratio)} fewer` : `${percent(ratio - 1)} more`;
const met = (isMet: boolean): string => (isMet ? 'yes' : '**no**');

const UNEVEN: Cell = { group: 'uneven', minutes: 12 };
const list = (ratios: readonly number[]): string => ratios.map(fewer).join('; ');

/** Days of the app, or of another row, as a share of those of another way, all families taken together. */
function together(book: Book, other: PlannerName): number {
  const sum = (planner: PlannerName): number =>
    FAMILIES.reduce((days, family) => days + meanDays(book.outcomes(family, UNEVEN, planner)), 0);
  return sum('app') / sum(other);
}

/** A row of the aims on days: held against the way by ear, with the stricter comparison beside it. */
function dayAim(
  book: Book,
  [aim, cell]: readonly [string, Cell],
  ways: { readonly byEar: PlannerName; readonly given: PlannerName },
  isMet: (ratios: readonly number[]) => boolean,
): readonly string[] {
  const ratios = (other: PlannerName) => FAMILIES.map((family) => book.ratio(family, cell, other));
  const best = FAMILIES.map((family) => book.attainable(family, cell, ways.byEar));
  const [byEar, given] = [ratios(ways.byEar), ratios(ways.given)];
  return [aim, list(byEar), met(isMet(byEar)), `${list(given)}: ${met(isMet(given))}`, list(best)];
}

export function dayAimTable(book: Book): string {
  const ofDay = CELLS.map((cell) =>
    dayAim(
      book,
      [`against one note a day, ${cellText(cell)}: at least 40 % fewer in each family`, cell],
      { byEar: 'stairDay', given: 'day' },
      (ratios) => ratios.every((ratio) => ratio <= 0.6),
    ),
  );
  const rotation = { byEar: 'stairBack', given: 'back' } as const;
  const [all, allGiven] = [together(book, 'stairBack'), together(book, 'back')];
  const aim = `against rotation with look-back, ${cellText(UNEVEN)}: at least 25 % fewer together`;
  const [, byFamily, , , best] = dayAim(book, [aim, UNEVEN], rotation, () => true);
  const rows = [
    ...ofDay,
    [
      aim,
      `${fewer(all)} (${byFamily})`,
      met(all <= 0.75),
      `${fewer(allGiven)}: ${met(allGiven <= 0.75)}`,
      best!,
    ],
    dayAim(
      book,
      ['the same: in no family more than 5 % slower', UNEVEN],
      rotation,
      (ratios) => Math.max(...ratios) <= 1.05,
    ),
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
