import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/preact';
import { useSignal } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { RunEvent } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { Notice } from '../../src/parts/notice/notice';
import { prefer, readPreferences } from '../../src/preferences';
import { RatingScreen } from '../../src/screens/play/rating';
import type { Session } from '../../src/day/session';
import { midi } from '../../src/sound/midi-input';
import { StoreContext } from '../../src/store-context';
import { fakeStore, type FakeStore } from './fake-store';

const ITEMS = ['d.major-53.right.2', 'd.minor-53.right.2', 'd.major-6.right.2'] as const;

const sessionOf = (count: number): Session => ({
  day: '2026-11-25',
  entry: {
    key: 'd.right.2.1',
    kind: 'round',
    note: 'd',
    way: 'right.2',
    items: ITEMS.slice(0, count),
  },
  at: 0,
  phase: 'rating',
  tempo: 240,
  pedal: false,
  ratings: {},
});

let store: FakeStore;

beforeEach(() => {
  vi.stubGlobal('scrollTo', () => undefined);
  store = fakeStore([{ kind: 'programme', programme: DEFAULT_PROGRAMME }]);
});
afterEach(() => {
  cleanup();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** The screen with its session; `seen` is the session as the screen has left it. */
function show(initial: Session) {
  const seen: { session: Session | null } = { session: initial };
  function Frame() {
    const session = useSignal<Session | null>(initial);
    seen.session = session.value;
    return (
      <StoreContext.Provider value={store}>
        <Notice />
        {session.value && (
          <RatingScreen session={session.value} setSession={(next) => (session.value = next)} />
        )}
      </StoreContext.Provider>
    );
  }
  render(<Frame />);
  return seen;
}

const runs = () => store.log.filter((event): event is RunEvent => event.kind === 'run');
const row = (name: string) => within(screen.getByRole('group', { name }));
/** Lets the time pass in which the pedal is not heard. */
function showSettled(session: Session) {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  const seen = show(session);
  return {
    seen,
    settle: () => {
      vi.advanceTimersByTime(1000);
      vi.useRealTimers();
    },
  };
}
const pedal = () => fireEvent.keyDown(document.body, { key: 'PageDown' });

test('one touch saves a round that went as expected', async () => {
  const seen = show(sessionOf(3));
  fireEvent.click(screen.getByRole('button', { name: 'All even: save' }));
  await waitFor(() => expect(seen.session).toBeNull());
  expect(
    runs().map(({ item, fluency, tempo, pedal: isPedal, entry }) => [
      item,
      fluency,
      tempo,
      isPedal,
      entry,
    ]),
  ).toEqual(ITEMS.map((item) => [item, 3, 240, false, 'd.right.2.1']));
  expect(screen.getByRole('status').textContent).toBe('Saved: 3 chords.');
});

test('only the exceptions are touched, and each may have a tempo of its own', async () => {
  const seen = show(sessionOf(3));
  fireEvent.click(row('minor triad, root position').getByRole('radio', { name: 'stopped' }));
  fireEvent.click(screen.getByRole('button', { name: /Tempo of major triad, first/ }));
  const own = screen.getByRole('spinbutton', { name: 'Tempo of this one' });
  fireEvent.change(own, { target: { value: '50' } });
  fireEvent.click(screen.getByRole('radio', { name: 'with pedal' }));
  fireEvent.change(screen.getByRole('spinbutton', { name: 'Tempo of all' }), {
    target: { value: '66' },
  });
  expect(seen.session!.ratings).toEqual({
    [ITEMS[1]]: { fluency: 1, tempo: null },
    [ITEMS[2]]: { fluency: 3, tempo: 200 },
  });
  fireEvent.click(screen.getByRole('button', { name: 'Save' }));
  await waitFor(() => expect(seen.session).toBeNull());
  expect(runs().map(({ fluency, tempo }) => [fluency, tempo])).toEqual([
    [3, 264],
    [1, 264],
    [3, 200],
  ]);
  expect(runs().every((run) => run.pedal)).toBe(true);
});

test('a rating that is set back to even is no exception', () => {
  const seen = show(sessionOf(3));
  const first = row('major triad, root position');
  fireEvent.click(first.getByRole('radio', { name: 'broke down' }));
  expect(Object.keys(seen.session!.ratings)).toHaveLength(1);
  fireEvent.click(first.getByRole('radio', { name: 'even' }));
  expect(seen.session!.ratings).toEqual({});
});

test('the pedal confirms, but not with the press that was meant for the last chord', async () => {
  const { seen, settle } = showSettled(sessionOf(3));
  pedal();
  expect(runs()).toHaveLength(0);
  settle();
  pedal();
  await waitFor(() => expect(seen.session).toBeNull());
  expect(runs()).toHaveLength(3);
});

test('a single run is rated by one touch', async () => {
  const seen = show(sessionOf(1));
  fireEvent.click(screen.getByRole('button', { name: 'effortless' }));
  await waitFor(() => expect(seen.session).toBeNull());
  expect(runs().map((run) => run.fluency)).toEqual([4]);
});

test('a pedal alone can say all five of a single run', async () => {
  const { seen, settle } = showSettled(sessionOf(1));
  settle();
  fireEvent.keyDown(document.body, { key: 'PageUp' });
  fireEvent.keyDown(document.body, { key: 'PageUp' });
  pedal();
  await waitFor(() => expect(seen.session).toBeNull());
  expect(runs().map((run) => run.fluency)).toEqual([1]);
});

/** The row that a key rates next. */
const current = () => document.querySelector('li[aria-current]')?.textContent ?? null;

describe('keys of the piano', () => {
  const LEARNT = { levels: [21, 23, 24, 26, 28], forward: 108, back: 107 };
  const port = { name: 'Piano', state: 'connected', onmidimessage: null as never };
  const press = (key: number) => {
    for (const status of [0x90, 0x80]) {
      (port.onmidimessage as (event: unknown) => void)({
        data: Uint8Array.of(status, key, 64),
        timeStamp: performance.now(),
      });
    }
    vi.advanceTimersByTime(1000);
  };
  beforeEach(async () => {
    const access = Object.assign(new EventTarget(), { inputs: new Map([['a', port]]) });
    vi.stubGlobal('navigator', Object.assign(navigator, { requestMIDIAccess: async () => access }));
    await midi.connect();
    await prefer(readPreferences({ pianoKeys: LEARNT }));
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] });
  });
  afterEach(async () => {
    vi.useRealTimers();
    midi.disconnect();
    await prefer(readPreferences({}));
  });

  test('rate a single run, which can be undone, but not what nobody has seen', async () => {
    const seen = show(sessionOf(1));
    press(21);
    expect(seen.session).not.toBeNull();
    press(28);
    vi.useRealTimers();
    await waitFor(() => expect(seen.session).toBeNull());
    expect(runs().map(({ fluency }) => fluency)).toEqual([4]);
    fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
    await waitFor(() => expect(seen.session).not.toBeNull());
  });

  test('rate a round row by row, go back in it, and save it', async () => {
    const seen = show(sessionOf(3));
    vi.advanceTimersByTime(1000);
    press(21);
    await vi.waitFor(() => expect(current()).toContain('minor triad, root'));
    press(26);
    await vi.waitFor(() => expect(current()).toContain('first inversion'));
    press(23);
    await vi.waitFor(() => expect(current()).toBeNull());
    press(21);
    expect(seen.session!.ratings).toEqual({
      [ITEMS[0]]: { fluency: 0, tempo: null },
      [ITEMS[2]]: { fluency: 1, tempo: null },
    });
    press(107);
    await vi.waitFor(() => expect(current()).toContain('first inversion'));
    press(28);
    await vi.waitFor(() => expect(current()).toBeNull());
    press(108);
    vi.useRealTimers();
    await waitFor(() => expect(seen.session).toBeNull());
    expect(runs().map(({ fluency }) => fluency)).toEqual([0, 3, 4]);
  });
});

test('when saving fails everything stays, and it says what to do', async () => {
  const seen = show(sessionOf(3));
  fireEvent.click(row('minor triad, root position').getByRole('radio', { name: 'uneven' }));
  store.failure = new Error('There is no room left on this device.');
  fireEvent.click(screen.getByRole('button', { name: 'Save' }));
  await screen.findByRole('alert');
  expect(screen.getByRole('alert').textContent).toContain('no room left');
  expect(seen.session!.ratings).toEqual({ [ITEMS[1]]: { fluency: 2, tempo: null } });
  expect(screen.getByRole('status').textContent).not.toContain('Saved');
  store.failure = null;
  fireEvent.click(screen.getByRole('button', { name: 'Save' }));
  await waitFor(() => expect(seen.session).toBeNull());
});

test('undo voids the runs and brings the ratings back', async () => {
  const seen = show(sessionOf(3));
  fireEvent.click(row('minor triad, root position').getByRole('radio', { name: 'uneven' }));
  fireEvent.click(screen.getByRole('button', { name: 'Save' }));
  await waitFor(() => expect(seen.session).toBeNull());
  fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
  await waitFor(() => expect(seen.session).not.toBeNull());
  expect(seen.session!.ratings).toEqual({ [ITEMS[1]]: { fluency: 2, tempo: null } });
  expect(store.todaysRuns.value).toEqual([]);
  expect(store.log.at(-1)!.kind).toBe('void');
});
