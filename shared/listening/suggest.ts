/** A fluency that the measures of a take suggest. The person decides. */
import type { Fluency } from '../log/events';
import { heardFluency } from '../log/heard';
import type { RunTake } from '../log/run-take';
import type { Score } from '../music/score';
import { findingsOf } from './findings';

/** By the rule of the measures (shared/log/heard.ts); and no run with a join that takes longer is effortless. */
export function suggestedFluency(take: RunTake, score: Score): Fluency {
  const fluency = heardFluency(take, score.grouping);
  return fluency === 4 && findingsOf(take, score).length > 0 ? 3 : fluency;
}
