import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { EventBody } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { roundItems, STAGES } from '../../shared/music/deck';
import { planDay } from '../../shared/planning/today';
import { whatStandsOut } from '../../src/screens/today/stands-out';
import { TodayScreen } from '../../src/screens/today/today-screen';
import { StoreContext } from '../../src/store-context';
import { fakeStore } from './fake-store';

beforeEach(() => vi.stubGlobal('scrollTo', () => undefined));
afterEach(cleanup);

const FEW = /too few for a round/;
const run = (id: string): EventBody => ({
  kind: 'run',
  item: id as never,
  tempo: 160,
  fluency: 1,
  pedal: false,
  judge: 'player',
  entry: null,
});
const show = (bodies: readonly EventBody[], minutes: number) => {
  const programme = { ...DEFAULT_PROGRAMME, notes: ['d'] as const, minutes };
  const store = fakeStore([{ kind: 'programme', programme }, ...bodies]);
  render(
    <StoreContext.Provider value={store}>
      <TodayScreen />
    </StoreContext.Provider>,
  );
};

test('an empty list asks for more time where that would help', async () => {
  // A single arpeggio takes about half a minute.
  show([], 0.2);
  expect(await screen.findByText(FEW)).toBeDefined();
});

test('where all is set aside it says so, and how to take it back', async () => {
  const all = STAGES.flatMap((stage) => roundItems('d', stage));
  show(
    all.map(({ id }) => ({ kind: 'aside', item: id, aside: true })),
    20,
  );
  expect(await screen.findByText(/All that could come now has been set aside/)).toBeDefined();
  expect(screen.queryByText(FEW)).toBeNull();
});

test('what was played as often as is good for a day does not ask for more time', async () => {
  const sixTimes = Array.from({ length: 6 }, () => roundItems('d', 'right.2')).flat();
  show(
    sixTimes.map(({ id }) => run(id)),
    20,
  );
  expect(await screen.findByText(/often enough for today/)).toBeDefined();
  expect(screen.queryByText(FEW)).toBeNull();
});

test('on the first day, too, a near date is named: it is why the list is short', () => {
  const programme = { ...DEFAULT_PROGRAMME, date: '2026-11-27' };
  const store = fakeStore([{ kind: 'programme', programme }]);
  const student = store.student.value;
  const [first, date] = whatStandsOut(student, planDay(student, '2026-11-25', 10));
  expect(first).toMatch(/^The first day/);
  expect(date).toBe('2 days left until 27 November 2026. The lists grow shorter.');
});
