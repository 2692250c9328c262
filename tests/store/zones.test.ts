import './page';
import { afterAll, describe, expect, it } from 'vitest';
import { dayOf } from '../../src/clock';
import type { Store } from '../../src/store/store';
import { fc } from '../learning/property';
import { deed, type Deed } from './histories';
import { comeBack, World } from './world';

const home = process.env['TZ'];

afterAll(() => {
  if (home === undefined) delete process.env['TZ'];
  else process.env['TZ'] = home;
});

const HOUR = 3_600_000;

/** Zones with and without clock changes, with a shift of half an hour, and one whose calendar once skipped a day. */
const ZONES = [
  ['UTC', Date.UTC(2026, 10, 25, 16), 0],
  // The clock goes forward on 29 March 2026 at 2 in the morning, and back on 25 October at 3.
  ['Europe/Berlin', Date.UTC(2026, 2, 28, 20), -60],
  ['America/New_York', Date.UTC(2026, 10, 1, 3), 240],
  ['Australia/Lord_Howe', Date.UTC(2026, 3, 4, 13), -660],
  ['Pacific/Apia', Date.UTC(2011, 11, 30, 8), 600],
] as const;

async function live(world: World, store: Store, next: Deed): Promise<void> {
  if (next.kind !== 'undo') {
    await store.record([next]);
    return;
  }
  const events = await world.events();
  const target = events.at(-1 - next.back);
  if (target) await store.record([{ kind: 'void', events: [target.id] }]);
}

describe.each(ZONES)('in %s', (zone, start, offset) => {
  it('the store shows what the log says, over days, clock changes and restarts', async () => {
    process.env['TZ'] = zone;
    expect(new Date(start).getTimezoneOffset()).toBe(offset);
    const step = fc.tuple(
      deed,
      fc.constantFrom(0, 0, 20_000, 20_000, HOUR, 7 * HOUR, 23 * HOUR, 25 * HOUR, -2 * HOUR),
      fc.constantFrom('go on', 'go on', 'go on', 'come back', 'open anew'),
    );
    const history = fc.array(step, { minLength: 4, maxLength: 16 });
    await fc.assert(
      fc.asyncProperty(history, async (steps) => {
        const world = new World();
        world.at = start;
        let store = await world.ready();
        for (const [next, wait, then] of steps) {
          await live(world, store, next);
          world.at += wait;
          if (then === 'come back') comeBack();
          if (then !== 'open anew') continue;
          store.close();
          store = await world.ready();
        }
        await world.settled(store);
        await world.agrees(store);
        const again = await world.ready();
        await world.agrees(again);
        expect(again.today.value).toBe(dayOf(world.at));
        await world.end();
      }),
      { numRuns: 8 },
    );
  });
});

it('a day is the calendar day of the place, not 24 hours', () => {
  process.env['TZ'] = 'Europe/Berlin';
  expect(dayOf(Date.UTC(2026, 2, 28, 22, 59))).toBe('2026-03-28');
  expect(dayOf(Date.UTC(2026, 2, 28, 23, 0))).toBe('2026-03-29');
  expect(dayOf(Date.UTC(2026, 2, 29, 21, 59))).toBe('2026-03-29');
  expect(dayOf(Date.UTC(2026, 2, 29, 22, 0))).toBe('2026-03-30');
  process.env['TZ'] = 'Pacific/Apia';
  expect(dayOf(Date.UTC(2011, 11, 30, 9, 59))).toBe('2011-12-29');
  expect(dayOf(Date.UTC(2011, 11, 30, 10, 0))).toBe('2011-12-31');
});
