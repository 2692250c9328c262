/**
 * Where a line of music that doesn't fit is broken: only at a beat on which no note is held over in either hand, in as few systems
 * as fit, about equally full, and rather at a turn, at the join of two arpeggios or at an octave than elsewhere.
 * All widths are in staff spaces.
 */
import { PARTS_OF_BEAT, type Score } from '../score';
import { notePartsOf } from '../theory';
import { type Piece, piecesBetween } from './pieces';
import { groupBy, HANDS, turnsOf } from './placed';
import { alterInKey, fifthsAt, printedKeyAt } from './signature';

/** Brace, clef and the ends of the staff. */
export const MARGIN = 7;
/** What a short note takes, and what is added. */
const NOTE = 2.7;
const LONG_NOTE = 1;
const ACCIDENTAL = 1;
const DOUBLE_ACCIDENTAL = 1.6;
const JOIN = 1;
/** Of a key signature: one sharp or flat. */
export const KEY_SIGN = 1;

const PER_SYSTEM = 10;
const PER_SLACK = 6;
const AT_OCTAVE = 0.4;
const ELSEWHERE = 1.5;
const TOO_WIDE = 100;

/** All that begins at one place, in either hand. */
interface Column {
  readonly place: number;
  readonly width: number;
  /** What it costs to begin a system here; null where none can begin. */
  readonly breakCost: number | null;
}

/** The stretch of a score that one system shows: places in parts of a beat, `to` not included. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

function widthOf(notes: readonly Piece[], fifths: number): number {
  const names = notes.flatMap(({ keys }) => keys.map(({ name }) => name));
  const needed = names
    .map((name) => ({ alter: notePartsOf(name).alter, usual: alterInKey(name, fifths) }))
    .filter(({ alter, usual }) => alter !== usual);
  const widths = needed.map(({ alter }) => (Math.abs(alter) > 1 ? DOUBLE_ACCIDENTAL : ACCIDENTAL));
  const isLong = notes.every(({ length }) => length >= PARTS_OF_BEAT);
  return NOTE + Math.max(0, ...widths) + (isLong ? LONG_NOTE : 0);
}

/** What the key takes that is printed at the end of a system, before one that begins with another. */
function endWidth(score: Score, next: number | undefined): number {
  if (next === undefined || !score.joins.includes(next)) return 0;
  const { fifths } = printedKeyAt(score, next, false);
  return fifths === 0 ? 0 : JOIN + Math.abs(fifths) * KEY_SIGN;
}

/** What a join and the key that is printed there take. */
const joinWidth = (score: Score, place: number): number =>
  JOIN + Math.abs(printedKeyAt(score, place, false).fifths) * KEY_SIGN;

function columnsOf(score: Score, from: number, to: number): readonly Column[] {
  const hands = HANDS.map((hand) => piecesBetween(score, hand, from, to)).filter(
    (pieces) => pieces.length > 0,
  );
  const best = new Set([...hands.flatMap(turnsOf), ...score.joins]);
  const joins = new Set(score.joins);
  return [...groupBy(hands.flat(), ({ place }) => place)]
    .toSorted(([a], [b]) => a - b)
    .map(([place, notes]): Column => {
      const isBegun = notes.length === hands.length && notes.every((note) => !note.isTiedBack);
      const canBreak = place % PARTS_OF_BEAT === 0 && isBegun;
      const isOctave = notes.every(({ keys }) => keys[0]?.tone === 0);
      const cost = best.has(place) ? 0 : isOctave ? AT_OCTAVE : ELSEWHERE;
      const own = widthOf(notes, fifthsAt(score, place));
      const width = own + (joins.has(place) ? joinWidth(score, place) : 0);
      return { place, width, breakCost: canBreak ? cost : null };
    });
}

/** The cheapest way to fill systems up to some column: its cost, and the column with which the last of them begins. */
interface Way {
  readonly cost: number;
  readonly start: number;
}

function wayTo(
  end: number,
  starts: readonly number[],
  costOf: (start: number, end: number) => number,
  ways: ReadonlyMap<number, Way>,
): Way {
  // The shortest system comes first, and is taken where even that is too wide.
  let best: Way = { cost: Infinity, start: starts.at(-1)! };
  for (const start of starts.toReversed()) {
    const own = costOf(start, end);
    if (own === Infinity) break;
    const cost = ways.get(start)!.cost + own;
    if (cost < best.cost) best = { cost, start };
  }
  return best.cost === Infinity ? { ...best, cost: ways.get(best.start)!.cost + TOO_WIDE } : best;
}

/**
 * How to break a score, or the part of it from `from` to `to`, into systems that are so many spaces wide. A stretch
 * that can be broken nowhere may be wider than that.
 */
export function breakerOf(
  score: Score,
  from = 0,
  to = Infinity,
): (width: number) => readonly Stretch[] {
  const columns = columnsOf(score, from, to);
  const starts = columns.flatMap(({ breakCost }, i) => (i === 0 || breakCost !== null ? [i] : []));
  const ends = [...starts.slice(1), columns.length];
  const upTo = [0];
  for (const { width } of columns) upTo.push(upTo.at(-1)! + width);

  return (width) => {
    if (columns.length === 0) return [];
    const costOf = (start: number, end: number): number => {
      const used = upTo[end]! - upTo[start]!;
      const first = Math.abs(fifthsAt(score, columns[start]!.place)) * KEY_SIGN;
      const room = width - MARGIN - first - endWidth(score, columns[end]?.place);
      if (used > room) return Infinity;
      return PER_SYSTEM + PER_SLACK * (1 - used / room) ** 2 + (columns[start]!.breakCost ?? 0);
    };
    const ways = new Map<number, Way>([[0, { cost: 0, start: 0 }]]);
    ends.forEach((end, i) => ways.set(end, wayTo(end, starts.slice(0, i + 1), costOf, ways)));
    const stretches: Stretch[] = [];
    for (let end = columns.length; end > 0; end = ways.get(end)!.start) {
      const start = columns[ways.get(end)!.start]!.place;
      stretches.unshift({ from: start, to: columns[end]?.place ?? to });
    }
    return stretches;
  };
}
