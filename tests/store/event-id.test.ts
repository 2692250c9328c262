import { parse, v7, version } from 'uuid';
import { describe, expect, it } from 'vitest';
import { isEventId } from '../../shared/formats/event';
import { nextEventId } from '../../src/store/event-id';
import { fc } from '../learning/property';

const NOW = Date.UTC(2026, 10, 25, 16);

/** By the bytes of RFC 9562, section 5.7: 48 bits of Unix time in milliseconds. */
const timeOf = (id: string): number =>
  parse(id)
    .slice(0, 6)
    .reduce((time, byte) => time * 256 + byte, 0);

describe('the id of a new event', () => {
  it('is a version 7 UUID of the moment', () => {
    const id = nextEventId(null, NOW);
    expect([version(id), timeOf(id), isEventId(id)]).toEqual([7, NOW, true]);
    expect(timeOf(nextEventId(id, NOW + 1))).toBe(NOW + 1);
  });

  it('differs from device to device at the same moment', () => {
    const ids = Array.from({ length: 1000 }, () => nextEventId(null, NOW));
    expect(new Set(ids).size).toBe(1000);
  });

  it.each([0, -1, -86_400_000])(
    'comes after the last one when the clock moved by %i ms',
    (moved) => {
      let last = nextEventId(null, NOW);
      for (let i = 0; i < 1000; i++) {
        const next = nextEventId(last, NOW + moved);
        expect(next > last && timeOf(next) === NOW).toBe(true);
        last = next;
      }
    },
  );

  it('comes after any last one, also the greatest of a millisecond', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 0xffff_ffff }),
        fc.integer({ min: NOW - 5, max: NOW + 5 }),
        (seq, at) => {
          const last = v7({ msecs: NOW, seq });
          const next = nextEventId(last, at);
          expect(next > last && isEventId(next)).toBe(true);
        },
      ),
    );
    const greatest = nextEventId(v7({ msecs: NOW, seq: 0xffff_ffff }), NOW);
    expect(timeOf(greatest)).toBe(NOW + 1);
  });
});
