/** What to do about a position change or a stretch, in a teacher's words (common practice, no source). */
import type { PositionChange, Stretch } from './positions';

/** Semitones from which the thumb or the hand cannot pass without leaving the keys: a fourth. */
const JUMP = 5;

/** What to try at one position change. */
export function changeHint({ kind, from, to, size }: PositionChange): string {
  if (kind === 'hand over') {
    return size >= JUMP
      ? 'Leave the thumb’s key early and carry the whole hand across, like a small jump with nothing pressed; the elbow leads.'
      : 'Let the thumb pivot and release it as soon as the next finger stands; the elbow leads, the hand arrives already spread over the new keys.';
  }
  if (size >= JUMP) {
    return 'Too far to reach under: let the arm carry the hand sideways and set the thumb down light, without pressing to bridge the gap.';
  }
  if (to.black && !from.black) {
    return 'Move further in between the black keys before the pass, so that the thumb meets the black key without a lift of the elbow.';
  }
  return from.finger === 3
    ? 'Flatten the fingers a little and turn the wrist about the third finger, so that the thumb is over its key before it is needed.'
    : 'Begin to bring the thumb under as soon as it is free, and let the wrist follow the fourth finger outwards instead of dipping.';
}

/** What to do about a stretch within a position. */
export const stretchHint = ({ lower, upper }: Stretch): string =>
  `Do not hold ${lower.finger} and ${upper.finger} down together: let the hand open towards the second note and close again. Stop if it hurts.`;
