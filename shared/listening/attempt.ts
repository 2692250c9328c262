/** Of all that was played of one arpeggio, what counts: the last playing of each of its notes. */
import type { Hand } from '../music/fingering/types';
import type { Pass, Played } from './align';
import type { Expected, ExpectedPart } from './expected';

export interface Attempt {
  readonly part: ExpectedPart;
  /** What counts, in the order of the notes; each pass is cut to the steps that count. */
  readonly passes: readonly Pass[];
  /** Places, counted from the beginning of the part, at which the player broke off. */
  readonly breaks: readonly number[];
}

const isIn = (step: number, from: number, to: number): boolean => step >= from && step <= to;

function cut(pass: Pass, from: number, to: number): Pass {
  const isInside = ({ step }: { readonly step: number }) => isIn(step, from, to);
  return {
    from,
    to,
    played: pass.played.filter(isInside),
    missed: pass.missed.filter(isInside),
    extra: pass.extra.filter(isInside),
  };
}

/** A last pass over the whole counts alone; else what is there is put together, later passes before earlier ones. */
function counted(passes: readonly Pass[], part: ExpectedPart): readonly Pass[] {
  const whole = passes.findLast(({ from, to }) => from <= part.from && to >= part.to);
  if (whole) return [cut(whole, part.from, part.to)];
  const taken: Pass[] = [];
  for (const pass of passes.toReversed()) {
    const first = taken[0]?.from ?? part.to + 1;
    const from = Math.max(pass.from, part.from);
    const to = Math.min(pass.to, first - 1);
    // Of a pass that began further on than a later one nothing is left.
    if (from <= to) taken.unshift(cut(pass, from, to));
  }
  return taken;
}

/** The attempt at one part of what was expected. It has no passes where nothing of the part was played. */
export function attemptAt(part: ExpectedPart, passes: readonly Pass[]): Attempt {
  // The note that two arpeggios share is not yet a playing of the one, or no longer of the other.
  const mine = passes.filter(({ from, to }) => from < part.to && to > part.from);
  const breaks = mine.filter(({ to }) => to < part.to).map(({ to }) => to - part.from);
  return { part, passes: counted(mine, part), breaks };
}

/** The notes of an expected part, hand by hand. */
export const notesOfPart = (expected: Expected, { from, to }: ExpectedPart) =>
  expected.steps.slice(from, to + 1).flat();

export interface Onset extends Played {
  /** Index of the pass; only within one are times from note to note. */
  readonly pass: number;
}

/** What one hand played, in order; `step` counts from the beginning of the part. */
export const onsetsOf = (attempt: Attempt, hand: Hand): readonly Onset[] =>
  attempt.passes.flatMap(({ played }, pass) =>
    played
      .filter(({ note }) => note.hand === hand)
      .map((one) => ({ ...one, step: one.step - attempt.part.from, pass })),
  );
