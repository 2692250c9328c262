import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { EventBody } from '../../shared/log/events';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import { planDay } from '../../shared/planning/today';
import { dayListOf } from '../../src/day/day-list';
import { whatStandsOut } from '../../src/screens/today/stands-out';
import { TodayScreen } from '../../src/screens/today/today-screen';
import { StoreContext } from '../../src/store-context';
import { fakeStore } from './fake-store';

beforeEach(() => vi.stubGlobal('scrollTo', () => undefined));
afterEach(cleanup);

const setTo = (change: Partial<Programme>): EventBody => ({
  kind: 'programme',
  programme: { ...DEFAULT_PROGRAMME, minutes: 5, ...change },
});
const evenRun = (item: string, entry: string): EventBody => ({
  kind: 'run',
  item: item as never,
  tempo: 160,
  fluency: 3,
  pedal: false,
  judge: 'player',
  entry,
});

test('at the end of the list another one for the same day can be made', async () => {
  const store = fakeStore([setTo({})]);
  render(
    <StoreContext.Provider value={store}>
      <TodayScreen />
    </StoreContext.Provider>,
  );
  const list = dayListOf(store);
  await waitFor(() => expect(list.next.value).not.toBeNull());
  expect(screen.queryByRole('button', { name: 'Another list for today' })).toBeNull();
  expect(screen.getByText(/^The first day/)).toBeDefined();
  for (const { entry } of list.entries.value) {
    await store.record(entry.items.map((item) => evenRun(item, entry.key)));
  }
  const another = await screen.findByRole('button', { name: 'Another list for today' });
  expect(screen.queryByText(/^The first day/)).toBeNull();
  fireEvent.click(another);
  await waitFor(() => expect(screen.getByRole('link', { name: 'Begin' })).toBeDefined());
  expect(screen.queryByText('done')).toBeNull();
});

test('near dates are named, and what the week before the examination is like', () => {
  const furtherDates = [
    { day: '2026-11-26', words: 'lesson' },
    { day: '2026-11-29', words: '' },
    { day: '2026-12-20', words: 'concert' },
  ];
  const store = fakeStore([
    setTo({ date: '2026-11-30', furtherDates }),
    evenRun('c.major-53.right.2', 'x'),
  ]);
  store.nextDay();
  const day = store.today.value;
  expect(whatStandsOut(store.dayStart.value, planDay(store.dayStart.value, day, 5))).toEqual([
    '4 days left until 30 November 2026. The lists grow shorter, and nothing new comes.',
    'Today: lesson.',
    'In 3 days: a date of the programme.',
  ]);
});
