import {
  cleanup,
  createEvent,
  fireEvent,
  render,
  screen,
  waitFor,
  within,
} from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import { itemOf } from '../../shared/music/deck';
import { joinsOf } from '../../shared/planning/joins';
import { parseDrillId } from '../../shared/planning/drills/kinds';
import { planDay } from '../../shared/planning/today';
import { Notice } from '../../src/parts/notice/notice';
import { LessonScreen } from '../../src/screens/lesson/lesson-screen';
import { StoreContext } from '../../src/store-context';
import { fakeStore, type FakeStore } from './fake-store';

const ITEM = 'd.major-6.right.2';
let store: FakeStore;
beforeEach(() => {
  vi.stubGlobal('scrollTo', () => undefined);
  store = fakeStore([
    { kind: 'programme', programme: { ...DEFAULT_PROGRAMME, notes: ['d', 'e'] } },
  ]);
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const show = (argument: string | null) =>
  render(
    <StoreContext.Provider value={store}>
      <Notice />
      <LessonScreen argument={argument} />
    </StoreContext.Provider>,
  );
const press = (name: string | RegExp) => fireEvent.click(screen.getByRole('button', { name }));
const student = () => store.student.value;

test('the chords of a round lead to each of them, and say how they stand', () => {
  show(null);
  press('E');
  const chords = screen.getAllByRole('link', { name: /^E, / });
  expect(chords).toHaveLength(11);
  expect(chords[0]!.getAttribute('href')).toBe('#/lesson/e.major-53.right.2');
  expect(chords[0]!.textContent).toContain('not played yet');
});

test('chords that are not asked for stand apart, and can be rated all the same', async () => {
  const chords = ['major-53', 'dominant-7', 'diminished-7'] as const;
  const { stages } = DEFAULT_PROGRAMME;
  const goal = { ...stages['right.2'], chords };
  const alone = { asked: false, target: 240 };
  const only: Programme = {
    ...DEFAULT_PROGRAMME,
    notes: ['d'],
    stages: {
      'right.2': goal,
      'left.2': alone,
      'together.2': alone,
      'together.4': alone,
      'together.contrary': alone,
    },
  };
  store = fakeStore([{ kind: 'programme', programme: only }]);
  show(null);
  const [asked, others] = screen.getAllByRole('list').map((list) => within(list));
  expect(asked!.getAllByRole('link')).toHaveLength(3);
  expect(others!.getAllByRole('link')).toHaveLength(8);
  const group = screen.getByText('Not asked for: 8 chords').closest('details')!;
  expect(group.open).toBe(false);
  press(/left hand, two octaves/);
  expect(screen.getByText('Not asked for: 11 chords').closest('details')!.open).toBe(true);

  cleanup();
  show('d.major-53.right.2');
  // The next one that is asked for, past five that are not.
  expect(screen.getByRole('link', { name: /^Next/ }).getAttribute('href')).toBe(
    '#/lesson/d.dominant-7.right.2',
  );
  cleanup();
  show(ITEM);
  expect(document.body.textContent).toContain('right hand, two octaves, not asked for');
  expect(screen.getByRole('link', { name: /^Next/ }).getAttribute('href')).toBe(
    '#/lesson/d.minor-6.right.2',
  );
  press('even');
  await waitFor(() => expect(student().lastRuns.get(ITEM)?.fluency).toBe(3));
});

test('one touch rates a run as the teacher’s, and undo takes it out again', async () => {
  show(ITEM);
  fireEvent.change(screen.getByLabelText(/^Tempo/), { target: { value: '52' } });
  press('uneven');
  await screen.findByText('Rated uneven at 52.');
  expect(store.todaysRuns.value).toMatchObject([
    { item: ITEM, tempo: 208, fluency: 2, judge: 'teacher', entry: null, pedal: false },
  ]);
  expect(screen.getByRole('button', { name: 'Take back: uneven at 52' })).toBeTruthy();
  press('Undo');
  await screen.findByText('Undone.');
  expect(store.todaysRuns.value).toEqual([]);
});

test('a double tap records one run', async () => {
  show(ITEM);
  const button = screen.getByRole('button', { name: 'even' });
  for (const timeStamp of [1000, 1150, 3000]) {
    const click = createEvent.click(button);
    Object.defineProperty(click, 'timeStamp', { value: timeStamp });
    fireEvent(button, click);
  }
  await waitFor(() => expect(store.todaysRuns.value).toHaveLength(2));
});

test('what is asked for stands on tomorrow’s list with its reason; asking can be undone both ways', async () => {
  show(ITEM);
  press('Ask for it tomorrow');
  await screen.findByText('Asked for tomorrow.');
  const tomorrow = () => planDay(student(), '2026-11-26', 20).entries[0]!;
  expect(tomorrow()).toMatchObject({ items: [ITEM], reason: { kind: 'wished' } });
  press('Asked for: take back');
  await screen.findByText('It is no longer asked for.');
  expect(student().wishes.size).toBe(0);
  press('Undo');
  await screen.findByRole('button', { name: 'Asked for: take back' });
  expect(tomorrow().reason.kind).toBe('wished');
});

test('an item can be set aside, which cannot be asked for then, and taken back', async () => {
  show(ITEM);
  press('Set it aside');
  await screen.findByRole('button', { name: 'Take it back on the list' });
  expect(student().aside.has(ITEM)).toBe(true);
  const ask = screen.getByRole('button', { name: 'Ask for it tomorrow' });
  expect(ask.hasAttribute('disabled')).toBe(true);
  press('Undo');
  await screen.findByRole('button', { name: 'Set it aside' });
  expect(student().aside.size).toBe(0);
});

test('a remark on a join says which, and whose it is', async () => {
  show(ITEM);
  const joins = joinsOf(student(), itemOf(ITEM));
  expect(joins.length).toBeGreaterThan(1);
  for (const { id } of joins) expect(parseDrillId(id)).toMatchObject({ kind: 'join' });
  fireEvent.change(screen.getByLabelText('About'), { target: { value: joins[0]!.id } });
  fireEvent.input(screen.getByLabelText('New remark'), { target: { value: 'Late.' } });
  press('Save remark');
  await screen.findByText('Remark saved.');
  expect(student().remarks).toMatchObject([
    { about: ITEM, join: joins[0]!.id, by: 'teacher', text: 'Late.' },
  ]);
  await waitFor(() => {
    expect(document.body.textContent).toContain('right hand, up: thumb under to');
    expect(document.body.textContent).toContain('Teacher, 25 November 2026');
  });
});
