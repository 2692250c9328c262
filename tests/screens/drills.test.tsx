import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { EventBody, RunBody } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { dayListOf } from '../../src/day/day-list';
import { Notice } from '../../src/parts/notice/notice';
import { DrillScreen } from '../../src/screens/drill/drill-screen';
import { TodayScreen } from '../../src/screens/today/today-screen';
import { StoreContext } from '../../src/store-context';
import { fakeStore, type FakeStore } from './fake-store';

const PROGRAMME: EventBody = {
  kind: 'programme',
  programme: { ...DEFAULT_PROGRAMME, reached: 'together.2', minutes: 20 },
};
const stopped: RunBody = {
  kind: 'run',
  item: 'd.major-6.right.2',
  tempo: 200,
  fluency: 1,
  pedal: false,
  judge: 'player',
  entry: null,
};

let store: FakeStore;
beforeEach(() => {
  vi.stubGlobal('scrollTo', () => undefined);
  store = fakeStore([PROGRAMME, stopped]);
  store.nextDay();
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
  location.hash = '';
});

const show = (content: preact.ComponentChild) =>
  render(
    <StoreContext.Provider value={store}>
      <Notice />
      {content}
    </StoreContext.Provider>,
  );
const beginning = () => screen.getByRole('link', { name: 'Begin' }).getAttribute('href');
const rows = () => screen.getAllByRole('listitem').map((row) => row.textContent);

describe('a drill before the rounds', () => {
  test('says why, comes first, and the whole still fits the minutes', async () => {
    show(<TodayScreen />);
    await screen.findByText('The join alone');
    expect(rows()[0]).toMatch(/^D.*major triad, first inversion, right hand.*Stopped yesterday/);
    expect(beginning()).toBe('#/drill/d.major-6.right.join');
    const list = dayListOf(store);
    const seconds = list.plan.value!.seconds + 90;
    expect(seconds).toBeLessThanOrEqual(20 * 60);
  });

  test('done, it is noted, and the way leads on to the rounds; undone, it is open again', async () => {
    const list = dayListOf(store);
    await waitFor(() => expect(list.drills.value[0]?.state).toBe('open'));
    show(<DrillScreen argument="d.major-6.right.join" />);
    fireEvent.click(screen.getByRole('button', { name: 'Done: go on' }));
    await waitFor(() => expect(list.drills.value[0]!.state).toBe('done'));
    expect(store.log.at(-1)).toMatchObject({ kind: 'drill', drill: 'd.major-6.right.join' });
    expect(location.hash).toBe('#/play');
    fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
    await waitFor(() => expect(list.drills.value[0]!.state).toBe('open'));
  });

  test('left out, it can be put back', async () => {
    const list = dayListOf(store);
    await waitFor(() => expect(list.drills.value[0]?.state).toBe('open'));
    show(<DrillScreen argument="d.major-6.right.join" />);
    fireEvent.click(screen.getByRole('button', { name: 'Leave it out today' }));
    expect(list.drills.value[0]!.state).toBe('left out');
    cleanup();
    show(<TodayScreen />);
    expect(beginning()).toBe('#/play');
    fireEvent.click(await screen.findByRole('button', { name: 'Put back' }));
    expect(list.drills.value[0]!.state).toBe('open');
  });
});

describe('the page of a drill', () => {
  test('tells the change, what to do, and the other drills', async () => {
    show(<DrillScreen argument="c.major-53.right.join" />);
    expect(screen.getByText(/Thumb under from 3 on G to C, a fourth/)).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Each position as a chord' })).toBeTruthy();
    expect(screen.getByRole('img', { name: /^The join alone: C, major triad/ })).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Note it as practised' }));
    expect(await screen.findByText('Practised today.')).toBeTruthy();
  });

  test('an address that names none leads back', () => {
    show(<DrillScreen argument="c.major-53.right.waltz" />);
    expect(screen.getByRole('heading', { name: 'No such drill' })).toBeTruthy();
  });
});

describe('a sore hand', () => {
  test('rests: the list goes to the other one and to the head, today only', async () => {
    show(<TodayScreen />);
    fireEvent.click(await screen.findByRole('radio', { name: 'right' }));
    await waitFor(() =>
      expect(rows()[0]).toMatch(/left hand, two octaves.*as the right hand rests/),
    );
    expect(rows().join()).not.toMatch(/The join alone/);
    expect(rows().at(-1)).toMatch(/in the mind/);
    store.nextDay();
    await waitFor(() => expect(rows().join()).not.toMatch(/in the mind/));
  });

  test('what was begun with it is not gone on with; ratings that wait are not lost', async () => {
    const list = dayListOf(store);
    await waitFor(() => expect(list.current.value).not.toBeNull());
    await list.setSession({ ...list.current.value!, at: 1 });
    list.setSore('right');
    expect(list.session.value).toBeNull();
    list.setSore(null);
    await list.setSession({ ...list.current.value!, phase: 'rating' });
    list.setSore('right');
    expect(list.session.value?.phase).toBe('rating');
  });

  test('an entry in the mind is done without a rating', async () => {
    const list = dayListOf(store);
    await waitFor(() => expect(list.isRead.value).toBe(true));
    list.setSore('both');
    const { key, isMental } = list.next.value!.entry;
    expect(isMental).toBe(true);
    const before = store.log.length;
    list.noteThought(key);
    expect(list.entries.value[0]!.state).toBe('done');
    expect(store.log.length).toBe(before);
  });
});
