import { describe, expect, it } from 'vitest';
import type { Day, LogEvent } from '../../shared/log/events';
import { replay } from '../../shared/planning/student';
import { entryOf, Timeline } from '../../src/store/timeline';
import { fc } from '../learning/property';
import { textOf } from './check';
import { log, someDay } from './histories';

const entriesOf = (events: readonly LogEvent[]) =>
  events.map((event) => entryOf({ id: event.id, student: event.student, event }));

const isRunOf = (day: Day, event: LogEvent) => event.kind === 'run' && event.day === day;
const isDrillOf = (day: Day, event: LogEvent) => event.kind === 'drill' && event.day === day;

/** What the store does with arrivals: they are added where that is possible, or else all is read anew. */
function taken(
  timeline: Timeline,
  known: readonly LogEvent[],
  some: readonly LogEvent[],
  day: Day,
) {
  const arrivals = entriesOf(some);
  if (timeline.canStandOn(day) && timeline.canTake(arrivals)) {
    timeline.add(arrivals, day);
    return timeline;
  }
  const anew = new Timeline();
  const all = entriesOf([...known, ...some]);
  anew.hear(all);
  for (let i = 0; i < all.length; i += 7) {
    anew.add(all.toSorted((a, b) => (a.id < b.id ? -1 : 1)).slice(i, i + 7), day);
  }
  return anew;
}

describe('what is kept up step by step equals the same rebuilt from the log', () => {
  it('whatever comes in, in whatever portions and order, on whatever day', () => {
    const portions = fc.array(fc.tuple(fc.nat(9), someDay), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(log, portions, fc.infiniteStream(fc.nat()), (events, steps, order) => {
        // Mostly in order, as a device records; now and then a portion of another device comes late.
        const keyed = events.map((event, i) => ({
          event,
          key: i + ((order.next().value as number) % 12),
        }));
        const waiting = keyed.toSorted((a, b) => a.key - b.key).map(({ event }) => event);
        let timeline = new Timeline();
        const known: LogEvent[] = [];
        for (const [size, day] of [...steps, [waiting.length, steps[0]![1]] as const]) {
          const some = waiting.splice(0, size);
          timeline = taken(timeline, known, some, day);
          known.push(...some);
          const view = timeline.view(day);
          expect(textOf(view.student)).toBe(textOf(replay(known)));
          const before = replay(
            known.filter((event) => !isRunOf(day, event) && !isDrillOf(day, event)),
          );
          expect(textOf(view.dayStart)).toBe(textOf(before));
          expect(view.todaysRuns.every((run) => isRunOf(day, run))).toBe(true);
        }
        expect(waiting).toHaveLength(0);
      }),
      { numRuns: 40 },
    );
  });

  it('a timeline that goes on from a kept base goes on the same', () => {
    fc.assert(
      fc.property(log, fc.nat(60), someDay, (events, split, day) => {
        const first = taken(new Timeline(), [], events.slice(0, split), day);
        const { upTo } = first.folded;
        const second = new Timeline(structuredClone(first.folded));
        const rest = events.filter(({ id }) => id > upTo);
        fc.pre(second.canTake(entriesOf(rest)));
        second.add(entriesOf(rest), day);
        expect(textOf(second.view(day).student)).toBe(textOf(replay(events)));
      }),
      { numRuns: 40 },
    );
  });
});

describe('the fold', () => {
  it('holds nothing of today, and all that lies before it', () => {
    fc.assert(
      fc.property(log, someDay, (events, day) => {
        const timeline = taken(new Timeline(), [], events, day);
        const firstOfToday = events.findIndex((event) => event.day === day);
        const folded = firstOfToday < 0 ? events : events.slice(0, firstOfToday);
        expect(timeline.folded.upTo).toBe(folded.at(-1)?.id ?? '');
        expect(timeline.folded.state.eventCount).toBe(folded.length);
      }),
      { numRuns: 50 },
    );
  });
});
