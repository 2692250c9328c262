import { cleanup, fireEvent, render, screen, within } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { roundItems } from '../../shared/music/deck';
import { ReportScreen } from '../../src/screens/report/report-screen';
import { StoreContext } from '../../src/store-context';
import { fakeStore, type FakeStore } from '../screens/fake-store';

let store: FakeStore;
beforeEach(() => {
  vi.stubGlobal('scrollTo', () => undefined);
  store = fakeStore([
    {
      kind: 'programme',
      programme: { ...DEFAULT_PROGRAMME, notes: ['d'], date: '2026-12-24' },
    },
    ...roundItems('d', 'right.2').map(
      (item) =>
        ({
          kind: 'run',
          item: item.id,
          tempo: 200,
          fluency: 2,
          pedal: false,
          judge: 'player',
          entry: null,
        }) as const,
    ),
    { kind: 'aside', item: 'd.dominant-42.left.2', aside: true },
    { kind: 'remark', about: 'd.major-6.right.2', text: 'Thumb.' },
  ]);
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const show = () =>
  render(
    <StoreContext.Provider value={store}>
      <ReportScreen />
    </StoreContext.Provider>,
  );

test('it says what its number is and is not', () => {
  const { container } = show();
  expect(container.textContent).toContain('Readiness on 24 December 2026');
  expect(container.textContent).toContain('if nothing is played in the 29 days until then');
  expect(container.textContent).toContain('Thin evidence: only 11 of 44 items have been played');
  expect(container.textContent).toContain('All figures are estimates');
});

test('it names the stages, the weakest, what is set aside, and the remarks', () => {
  show();
  const [stages, weakest, weeks] = screen.getAllByRole('table');
  const left = within(stages!).getByRole('row', { name: /left hand, two octaves/ });
  expect(left.textContent).toMatch(/^left hand, two octaves60\d\d0 of 11\d+$/);
  expect(within(weakest!).getAllByRole('row')).toHaveLength(1 + 2);
  expect(within(weeks!).getAllByRole('row')).toHaveLength(1 + 12);
  expect(screen.getByText('D, dominant 4/2 (left hand, two octaves).')).toBeTruthy();
  expect(screen.getByText(/D, major 6, right hand, two octaves:/)).toBeTruthy();
});

test('the name can be given on the spot', async () => {
  show();
  fireEvent.click(screen.getByRole('button', { name: 'Add the name' }));
  fireEvent.input(screen.getByLabelText('Name of the student'), {
    target: { value: 'Ono Muster' },
  });
  fireEvent.click(screen.getByRole('button', { name: 'Save name' }));
  expect(await screen.findByText('Ono Muster, 25 November 2026')).toBeTruthy();
  expect(screen.queryByLabelText('Name of the student')).toBeNull();
});
