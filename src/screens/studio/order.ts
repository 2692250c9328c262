/** The lines of the overview in the order that is asked for. */
import type { StudentId } from '../../../shared/log/events';
import type { Overview } from '../../store/store';

export interface Line {
  readonly student: StudentId;
  readonly name: string;
  /** Null until it has been read. */
  readonly overview: Overview | null;
  readonly waiting: readonly string[];
}

export const COLUMNS = [
  'name',
  'now',
  'onDate',
  'date',
  'practice',
  'days',
  'minutes',
  'waiting',
] as const;
export type Column = (typeof COLUMNS)[number];

export interface Order {
  readonly column: Column;
  readonly isFalling: boolean;
}

/** What a column is sorted by; null where there is nothing, which comes last either way. */
function keyOf(column: Column, { overview, waiting }: Line): number | string | null {
  if (overview === null) return null;
  const { now, onDate, date, lastPractice, days, seconds } = overview.figures;
  const keys = {
    now,
    onDate,
    date,
    practice: lastPractice,
    days,
    minutes: seconds,
    waiting: waiting.length === 0 ? null : waiting.length,
  };
  return column === 'name' ? null : keys[column];
}

const names = new Intl.Collator(undefined, { numeric: true });

/** The order of names where all else is the same, and that of the roster where names are the same too. */
export function inOrder(lines: readonly Line[], { column, isFalling }: Order): readonly Line[] {
  const sign = isFalling ? -1 : 1;
  return lines.toSorted((one, other) => {
    if (column === 'name') return sign * names.compare(one.name, other.name);
    const [a, b] = [keyOf(column, one), keyOf(column, other)];
    if (a === b) return names.compare(one.name, other.name);
    if (a === null) return 1;
    if (b === null) return -1;
    return a < b ? -sign : sign;
  });
}

/** What most wants to be seen comes first: the least ready, the longest without practice, the nearest date. */
const startsFalling = (column: Column): boolean => column === 'waiting';

/** The order after a tap on the head of a column. */
export const turned = (before: Order, column: Column): Order =>
  before.column === column
    ? { column, isFalling: !before.isFalling }
    : { column, isFalling: startsFalling(column) };

const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replaceAll(/\p{Mark}/gu, '')
    .toLowerCase();

/** Those whose name has what was typed, whatever its capitals and accents. */
export const found = (lines: readonly Line[], typed: string): readonly Line[] =>
  lines.filter(({ name }) => plain(name).includes(plain(typed.trim())));
