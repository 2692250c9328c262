import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { Notice } from '../../src/parts/notice/notice';
import { FingeringScreen } from '../../src/screens/fingering/fingering-screen';
import { ItemScreen } from '../../src/screens/item/item-screen';
import { HandSection } from '../../src/screens/settings/hand-section';
import { StoreContext } from '../../src/store-context';
import { fakeStore, type FakeStore } from '../screens/fake-store';

let store: FakeStore;
beforeEach(() => {
  vi.stubGlobal('scrollTo', () => undefined);
  store = fakeStore([{ kind: 'programme', programme: DEFAULT_PROGRAMME }]);
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const show = (content: preact.ComponentChild) =>
  render(
    <StoreContext.Provider value={store}>
      <Notice />
      {content}
    </StoreContext.Provider>,
  );

const right = () => screen.getByRole('img', { name: /^Right hand/ }).getAttribute('aria-label');

test('shows the fingers of each hand that plays, and where the hand changes', () => {
  show(<ItemScreen argument="c.major-53.together.2" />);
  expect(right()).toBe('Right hand, from the lowest note: 1 2 3 1 2 3 5');
  expect(screen.getByRole('img', { name: /^Left hand/ }).getAttribute('aria-label')).toBe(
    'Left hand, from the lowest note: 5 4 2 1 4 2 1',
  );
  expect(screen.getByText(/Thumb under from 3 on G to C, a fourth/)).toBeTruthy();
});

test('an alternative is recorded, holds, and can be undone', async () => {
  show(<ItemScreen argument="d.major-6.right.2" />);
  const before = right();
  const [, second] = screen.getAllByRole('radio');
  fireEvent.click(second!);
  await waitFor(() => expect(right()).not.toBe(before));
  expect(store.log.at(-1)).toMatchObject({
    kind: 'fingering',
    arpeggio: 'd.major-6',
    hand: 'right',
  });
  fireEvent.click(await screen.findByRole('button', { name: 'Undo' }));
  await waitFor(() => expect(right()).toBe(before));
});

test('an own fingering is read from digits; what no hand can play is explained, never called wrong', async () => {
  show(<ItemScreen argument="d.major-6.right.2" />);
  const field = screen.getByRole('textbox', { name: /Your own/ });
  const type = (value: string) => {
    fireEvent.input(field, { target: { value } });
    fireEvent.click(screen.getByRole('button', { name: 'Use these fingers' }));
  };
  type('1325');
  expect((await screen.findByRole('alert')).textContent).toContain(
    'From F with 3 to B♭ with 2, two fingers would cross',
  );
  expect(store.log).toHaveLength(1);
  type('2 3 4 1 3 4 5');
  await waitFor(() => expect(right()).toContain('2 3 4 1 3 4 5'));
  expect(screen.queryByRole('alert')).toBeNull();
  expect(screen.getByText('Your own.')).toBeTruthy();
});

test('the chart has a table for each starting note', () => {
  show(<FingeringScreen />);
  const tables = screen.getAllByRole('table');
  expect(tables).toHaveLength(DEFAULT_PROGRAMME.notes.length);
  expect(within(tables[0]!).getAllByRole('row')).toHaveLength(12);
});

test('the reach of the hand is recorded, and forgotten', async () => {
  show(<HandSection />);
  fireEvent.click(screen.getByRole('button', { name: /less/ }));
  await waitFor(() => expect(store.student.value.span).toBe(12));
  fireEvent.click(screen.getByRole('button', { name: 'Assume an average hand' }));
  await waitFor(() => expect(store.student.value.span).toBeNull());
});
