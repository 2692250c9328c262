/** What a run keeps of a take that was heard of it, for tests: 13 right notes at a steady tempo. */
import type { RunTake } from '../../shared/log/run-take';

export const takeWith = (hands: RunTake['hands'], certainty = 1): RunTake => ({
  source: 'midi',
  certainty,
  tempo: 200,
  drift: 0,
  notes: 13,
  right: 13,
  faults: [],
  breaks: [],
  lead: null,
  looseness: null,
  hands,
});
