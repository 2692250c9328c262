import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { StartScreen } from '../../src/screens/start/start-screen';
import { StoreContext } from '../../src/store-context';
import { fakeStore, type FakeStore } from './fake-store';

afterEach(cleanup);

function show(store: FakeStore): void {
  history.replaceState(null, '', '#/start');
  render(
    <StoreContext.Provider value={store}>
      <StartScreen />
    </StoreContext.Provider>,
  );
}

test('a programme that was set leads to the list, and "back" does not lead here again', async () => {
  const store = fakeStore([]);
  show(store);
  const { length } = history;
  fireEvent.click(screen.getByRole('button', { name: /Make today/ }));
  await waitFor(() => expect(location.hash).toBe('#/today'));
  expect(store.student.value.programme).toEqual(DEFAULT_PROGRAMME);
  expect(history.length).toBe(length);
});

test('who has a programme is not asked for one: the form would put another in its place', async () => {
  const own = { ...DEFAULT_PROGRAMME, notes: ['d'] as const, minutes: 45 };
  show(fakeStore([{ kind: 'programme', programme: own }]));
  await waitFor(() => expect(location.hash).toBe('#/today'));
});
