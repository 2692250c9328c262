/** Ids of new events: version 7 UUIDs (RFC 9562), each greater than all that the log holds. */
import { v7 } from 'uuid';
import type { EventId } from '../../shared/log/events';

/** The uuid package counts ids of the same millisecond in the 32 bits that follow the time, version and variant apart. */
const COUNTS = 2 ** 32;

function clockOf(id: EventId): { readonly time: number; readonly count: number } {
  const hex = id.replaceAll('-', '');
  const high = parseInt(hex.slice(13, 16), 16);
  // Two bits of the variant, twenty of the count, two random ones.
  const low = (parseInt(hex.slice(16, 22), 16) >>> 2) % 2 ** 20;
  return { time: parseInt(hex.slice(0, 12), 16), count: high * 2 ** 20 + low };
}

/**
 * An id of this moment (milliseconds), or, if the last id is not in the past (the same millisecond, a clock that was put
 * back, events of another device), the next after it, so that what is recorded last always sorts last.
 */
export function nextEventId(last: EventId | null, at: number): EventId {
  if (last === null) return v7({ msecs: at });
  const { time, count } = clockOf(last);
  if (at > time) return v7({ msecs: at });
  const isFull = count + 1 === COUNTS;
  return isFull ? v7({ msecs: time + 1, seq: 0 }) : v7({ msecs: time, seq: count + 1 });
}
