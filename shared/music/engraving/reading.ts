/**
 * In which clef, and under which octave sign, every note is written: the choice with the fewest ledger lines and the
 * fewest changes over the whole line, found as a shortest path. Common practice, no source: at most three ledger lines,
 * changes rather at a beat than within one, 8va only over a treble and 8vb only under a bass clef.
 */
import type { Hand } from '../fingering/types';
import { PARTS_OF_BEAT } from '../score';
import { notePartsOf, type NoteName } from '../theory';
import type { Piece } from './pieces';

export type Clef = 'treble' | 'bass';

export interface Reading {
  readonly clef: Clef;
  /** Octaves that the notes sound above what is written: 1 is 8va, 2 is 15ma, -1 is 8vb. */
  readonly octaves: number;
}

const READINGS: readonly Reading[] = [
  { clef: 'bass', octaves: -1 },
  { clef: 'bass', octaves: 0 },
  { clef: 'treble', octaves: 0 },
  { clef: 'treble', octaves: 1 },
  { clef: 'treble', octaves: 2 },
];

/** Steps of the white keys above C0; the outer lines of the clefs are E4 and F5, G2 and A3. */
const LINES: Readonly<Record<Clef, readonly [bottom: number, top: number]>> = {
  treble: [30, 38],
  bass: [18, 26],
};
export const MOST_LEDGER_LINES = 3;
/** Each ledger line counts; a change of clef has to save more than three of them. */
const LEDGER_COST = [0, 1, 2, 3];
const TOO_MANY = 100;
const OTHER_CLEF = 0.1;
/** By the octaves: 15ma only where 8va still leaves too many lines. */
const UNDER_OCTAVE_SIGN = [0, 0.4, 3];
const CHANGE_OF_CLEF = 3.1;
const CHANGE_OF_OCTAVE = 4;
/** It parts the notes of a beam. */
const WITHIN_BEAT = 6;
/** At the beginning of a system the clef is printed anyhow. */
const AT_START = 0.3;

/** White keys above C0. */
function whiteKey(name: NoteName): number {
  const { letter, octave } = notePartsOf(name);
  return 'CDEFGAB'.indexOf(letter) + 7 * octave!;
}

const stepOf = (key: number, { clef, octaves }: Reading): number =>
  key - 7 * octaves - LINES[clef][0];

/** White keys from the bottom line of the clef, as written: 0 is on it, 8 on the top line. */
export const stepOnStaff = (name: NoteName, reading: Reading): number =>
  stepOf(whiteKey(name), reading);

export const ledgerLines = (step: number): number =>
  Math.max(0, Math.floor((step - 8) / 2), Math.floor(-step / 2));

function costOf(keys: readonly number[], reading: Reading, hand: Hand): number {
  const most = Math.max(0, ...keys.map((key) => ledgerLines(stepOf(key, reading))));
  return (
    (LEDGER_COST[most] ?? TOO_MANY * most) +
    ((reading.clef === 'treble') === (hand === 'right') ? 0 : OTHER_CLEF) +
    UNDER_OCTAVE_SIGN[Math.abs(reading.octaves)]!
  );
}

type Where = 'start' | 'beat' | 'within' | 'tied';

function changeCost(from: Reading, to: Reading, where: Where): number {
  if (from === to) return 0;
  if (where === 'tied') return Infinity;
  const clef = from.clef === to.clef ? 0 : CHANGE_OF_CLEF;
  const octave = from.octaves === to.octaves ? 0 : CHANGE_OF_OCTAVE;
  if (where === 'start') return clef * AT_START + octave;
  return clef + octave + (where === 'beat' ? 0 : WITHIN_BEAT);
}

/** Asked for so often that they are kept: by where the change is, by what it leads to, by what it leads from. */
const changeCosts = (where: Where): readonly (readonly number[])[] =>
  READINGS.map((to) => READINGS.map((from) => changeCost(from, to, where)));
const CHANGES: Readonly<Record<Where, readonly (readonly number[])[]>> = {
  start: changeCosts('start'),
  beat: changeCosts('beat'),
  within: changeCosts('within'),
  tied: changeCosts('tied'),
};

function whereOf({ place, isTiedBack }: Piece, starts: ReadonlySet<number>): Where {
  if (isTiedBack) return 'tied';
  if (starts.has(place)) return 'start';
  return place % PARTS_OF_BEAT === 0 ? 'beat' : 'within';
}

/** One reading for each piece; `starts` are the places at which a system begins. */
export function readingsOf(
  pieces: readonly Piece[],
  hand: Hand,
  starts: ReadonlySet<number> = new Set(),
): readonly Reading[] {
  let costs: readonly number[] = READINGS.map(() => 0);
  const ways: (readonly number[])[] = [];
  for (const piece of pieces) {
    const changes = CHANGES[whereOf(piece, starts)];
    const best = changes.map((costsFrom) => cheapest(costs, costsFrom));
    const whites = piece.keys.map(({ name }) => whiteKey(name));
    const before = costs;
    costs = READINGS.map(
      (to, k) => before[best[k]!]! + changes[k]![best[k]!]! + costOf(whites, to, hand),
    );
    ways.push(best);
  }
  let at = costs.indexOf(Math.min(...costs));
  const chosen: Reading[] = [];
  for (const best of ways.toReversed()) {
    chosen.push(READINGS[at]!);
    at = best[at]!;
  }
  return chosen.toReversed();
}

/** The index with the smallest sum. */
function cheapest(costs: readonly number[], more: readonly number[]): number {
  let best = 0;
  for (let i = 1; i < costs.length; i++) {
    if (costs[i]! + more[i]! < costs[best]! + more[best]!) best = i;
  }
  return best;
}
