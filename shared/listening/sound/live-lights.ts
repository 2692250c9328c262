/** Which notes of a run that goes on have been heard. A light is for what was heard; all else is dark, and no fault. */
import type { ExpectedStep } from '../expected';
import type { Lit } from '../follower';
import type { Hand } from '../../music/fingering/types';
import type { Evidence } from './evidence';
import type { Begun } from './live-follow';
import { verdictsOf } from './verdict';

/**
 * Share from which on the upper of two notes lights up with the lower: most of its partials are those of the lower, which
 * leave it little, while without it there is next to nothing. Of what is there, two in a hundred are below; of what is not
 * there, six in ten (a recorded grand and a sound font in three places).
 */
const TRACE = 0.0045;
/** Steps of which the median total is the usual one. */
const USUAL_OF = 32;
/** Moments by which a step may have been put elsewhere and is still the same. */
const SAME = 1;

interface Judged extends Begun {
  readonly isHeard: readonly boolean[];
}

export interface LiveLights {
  /** The likeliest way as far as enough is known of its steps. */
  follow(path: readonly Begun[]): void;
  /** The player goes on from a step: what was lit from there on is to be played again. */
  turnTo(start: number): void;
  lit(): Lit;
}

export function liveLights(
  steps: readonly ExpectedStep[],
  evidenceOf: (begun: Begun) => Evidence,
): LiveLights {
  /** What can be looked back on no more, and what can. */
  let settled: readonly Judged[] = [];
  let recent: readonly Judged[] = [];
  let totals: readonly number[] = [];
  const judge = (begun: Begun): Judged => {
    const evidence = evidenceOf(begun);
    totals = [...totals, evidence.total].slice(-USUAL_OF);
    const usual = totals.toSorted((a, b) => a - b)[totals.length >> 1]!;
    return { ...begun, isHeard: heardOf(steps[begun.step]!, evidence, usual) };
  };
  const settle = (before: number) => {
    settled = [...settled, ...recent.filter(({ moment }) => moment < before)];
  };
  return {
    follow: (path) => {
      settle(path[0]?.moment ?? Infinity);
      recent = path.map(
        (begun) =>
          recent.find(
            ({ step, moment }) => step === begun.step && Math.abs(moment - begun.moment) <= SAME,
          ) ?? judge(begun),
      );
    },
    turnTo: (start) => {
      settle(Infinity);
      settled = [...settled, { step: start, moment: Infinity, isHeard: [] }];
      recent = [];
    },
    lit: () => {
      const lit = { right: new Set<number>(), left: new Set<number>() };
      let last = -1;
      for (const { step, isHeard } of [...settled, ...recent]) {
        if (step <= last) goDarkFrom(step, lit);
        last = step;
        steps[step]!.forEach(({ hand }, i) => {
          if (isHeard[i]) lit[hand].add(step);
        });
      }
      return lit;
    },
  };
}

function goDarkFrom(step: number, { right, left }: Readonly<Record<Hand, Set<number>>>): void {
  for (const ofHand of [right, left]) {
    for (const one of ofHand) if (one >= step) ofHand.delete(one);
  }
}

function heardOf(step: ExpectedStep, evidence: Evidence, usual: number): readonly boolean[] {
  const verdicts = verdictsOf(step, evidence, { usual, isQuiet: true });
  const isOneRight = verdicts.some(({ kind }) => kind === 'right');
  return verdicts.map(({ kind }, i) => {
    const share = evidence.amounts[step[i]!.key.midi - evidence.lowest]! / evidence.total;
    return kind === 'right' || (kind === 'unsure' && isOneRight && share >= TRACE);
  });
}
