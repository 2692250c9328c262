/**
 * Where in the course a player is, while the playing goes on: key by key, without knowing what comes next. Of all ways in
 * which the keys so far can be understood the likeliest few are kept (a beam search), with the costs of align.ts: a key is
 * an expected one, a wrong one in its place or an extra one; notes may be missing; and who goes elsewhere mostly begins an
 * arpeggio again. The likeliest way is the place.
 */
import type { Expected } from './expected';
import { Line, type Lit } from './follower-line';

export type { Lit } from './follower-line';

export interface Follower {
  /** A key was struck, at a time in seconds. */
  add(midi: number, on: number): void;
  /** The player was turned to the arpeggio that begins at a step, and goes on from there. */
  turnTo(start: number): void;
  /** The step that was played last; -1 before the first. */
  step(): number;
  lit(): Lit;
}

/** Octaves by which a player may sit elsewhere on the keyboard than the item says; as in judge.ts. */
const SHIFTS = [0, 12, -12] as const;
/** In faults (P): how much likelier it is that the player sits in the right place, and when another is given up. */
const ELSEWHERE = 1;
const GIVEN_UP = 8;

/** `interval`: seconds from note to note to begin with. */
export function following(expected: Expected, interval: number): Follower {
  let lines = SHIFTS.map((shift) => ({ shift, line: new Line(expected, interval) }));
  const costOf = ({ shift, line }: (typeof lines)[number]): number =>
    line.cost() + (shift === 0 ? 0 : ELSEWHERE);
  return {
    add: (midi, on) => {
      for (const { shift, line } of lines) line.add(midi + shift, on);
      lines = lines.toSorted((a, b) => costOf(a) - costOf(b) || a.shift - b.shift);
      const most = costOf(lines[0]!) + GIVEN_UP;
      lines = lines.filter((one) => costOf(one) <= most);
    },
    turnTo: (start) => {
      for (const { line } of lines) line.turnTo(start);
    },
    step: () => lines[0]!.line.step(),
    lit: () => lines[0]!.line.lit(),
  };
}
