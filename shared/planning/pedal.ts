/** When the pedal is offered: first every bad join is to be heard without it. */
import { EVEN } from '../log/events';
import { type Programme, targetFor } from '../log/programme';
import type { ItemId } from '../music/deck';
import { itemOf } from '../music/deck';
import type { Student } from './student';

/**
 * Whether all of these items came out at least even at the tempo that is asked, the last time. One that does not hold with
 * the pedal goes back to dry. Common practice, no source.
 */
export const isReadyForPedal = (
  { lastRuns }: Student,
  programme: Programme,
  items: readonly ItemId[],
): boolean =>
  items.every((id) => {
    const last = lastRuns.get(id);
    if (last === undefined || last.fluency < EVEN) return false;
    return last.tempo >= targetFor(programme, itemOf(id));
  });
