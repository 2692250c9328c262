import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { RunBody } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { Notice } from '../../src/parts/notice/notice';
import { ItemScreen } from '../../src/screens/item/item-screen';
import { StoreContext } from '../../src/store-context';
import { fakeStore, type FakeStore } from '../screens/fake-store';
import { takeWith } from '../learning/takes';

const ITEM = 'd.major-6.right.2';
const run = (change: Partial<RunBody> = {}): RunBody => ({
  kind: 'run',
  item: ITEM,
  tempo: 200,
  fluency: 3,
  pedal: false,
  judge: 'player',
  entry: null,
  ...change,
});

let store: FakeStore;
beforeEach(() => {
  vi.stubGlobal('scrollTo', () => undefined);
  store = fakeStore([
    { kind: 'programme', programme: DEFAULT_PROGRAMME },
    run(),
    run({ tempo: 160, fluency: 1, judge: 'teacher' }),
  ]);
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const show = (argument: string | null = ITEM) =>
  render(
    <StoreContext.Provider value={store}>
      <Notice />
      <ItemScreen argument={argument} />
    </StoreContext.Provider>,
  );

test('an address that names no item says so', () => {
  show('d.major-6.nowhere');
  expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('No such arpeggio');
});

test('its notes are spelt and its runs are in the table, newest first', async () => {
  show();
  expect(screen.getByRole('heading', { level: 1 }).textContent).toBe(
    'D, major triad, first inversion',
  );
  expect(screen.getByText('D F B♭')).toBeTruthy();
  const rows = within(await screen.findByRole('table', { hidden: true })).getAllByRole('row', {
    hidden: true,
  });
  expect(rows.slice(1).map((row) => row.textContent)).toEqual([
    expect.stringContaining('40stopped (teacher)dry'),
    expect.stringContaining('50evendry'),
  ]);
});

/** A button of the question that is open. */
const answer = (name: string) =>
  within(document.querySelector<HTMLElement>('dialog[open]')!).getByRole('button', {
    name,
    hidden: true,
  });

test('a run is taken back only after a question', async () => {
  show();
  const [first] = await screen.findAllByRole('button', { name: /Take back/, hidden: true });
  fireEvent.click(first!);
  fireEvent.click(answer('Keep it'));
  expect(store.log).toHaveLength(3);
  fireEvent.click(first!);
  fireEvent.click(answer('Take back'));
  await waitFor(() => expect(store.log.at(-1)).toMatchObject({ kind: 'void', events: ['000002'] }));
  await screen.findByText('The run as a table');
  // Its button is gone with the run.
  await waitFor(() => expect(document.activeElement!.closest('details')).not.toBeNull());
});

/** What stands beside a term. */
const fact = (name: string) => screen.getByText(name, { selector: 'dt' }).nextSibling!;

test('of what the programme does not ask for it does not tell a tempo as asked', async () => {
  show();
  expect(fact('asked').textContent).toContain('60');
  expect(fact('chance there')).toBeTruthy();
  cleanup();
  await store.record([{ kind: 'programme', programme: { ...DEFAULT_PROGRAMME, notes: ['e'] } }]);
  show();
  expect(fact('asked').textContent).toBe('not asked for');
  expect(fact('chance at 60')).toBeTruthy();
});

test('setting aside can be undone in one touch', async () => {
  show();
  fireEvent.click(screen.getByRole('button', { name: 'Set it aside' }));
  fireEvent.click(await screen.findByRole('button', { name: 'Undo' }));
  await waitFor(() =>
    expect(store.log.slice(-2)).toMatchObject([
      { kind: 'aside', item: ITEM, aside: true },
      { kind: 'aside', item: ITEM, aside: false },
    ]),
  );
});

test('a remark that cannot be saved stays in its field', async () => {
  show();
  const field = screen.getByLabelText<HTMLTextAreaElement>('New remark');
  fireEvent.input(field, { target: { value: ' thumb ' } });
  store.failure = new Error('no room');
  const save = screen.getByRole('button', { name: 'Save remark' });
  save.focus();
  fireEvent.click(save);
  await screen.findByText('no room');
  expect(field.value).toBe(' thumb ');
  store.failure = null;
  fireEvent.click(save);
  await screen.findByText('thumb');
  expect(store.log.at(-1)).toMatchObject({ kind: 'remark', about: ITEM, text: 'thumb' });
  expect(document.activeElement).toBe(save);
});

/** A take of the item in which the hand waits so long, in ms, at its position change going up. */
const heard = (wait: number): RunBody => ({
  ...run({ item: ITEM }),
  take: takeWith({
    right: {
      waits: [null, 2, -3, wait, wait, 1, 0, 2, -1, 3, -2, 1, 0],
      unevenness: 6,
      overlap: 20,
      thumbLate: 0,
      loudness: 5,
      thumbAccent: 0,
    },
    left: null,
  }),
});

test('a run that was heard shows its take, and several show how the joins have gone', async () => {
  show();
  await screen.findByRole('table', { hidden: true });
  expect(screen.queryByRole('heading', { name: 'Heard' })).toBeNull();
  await store.record([heard(160), heard(20)]);
  await screen.findByRole('heading', { name: 'Heard' });
  // The last one at first; the one before can be chosen.
  expect(screen.getByText('Every note is there, and nothing stands out.')).toBeTruthy();
  const which = screen.getByLabelText<HTMLSelectElement>('Run');
  expect(which.options).toHaveLength(2);
  fireEvent.change(which, { target: { value: which.options[1]!.value } });
  await screen.findByText(/it waits 0\.16 s before/);
  const joins = screen.getByRole('table', { name: /The joins/ });
  expect(within(joins).getAllByRole('row')[0]!.textContent).toContain('0.02 s');
});
