import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { EventBody, RunBody } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { PROBES } from '../../shared/planning/placement';
import { Notice } from '../../src/parts/notice/notice';
import { dayListOf } from '../../src/day/day-list';
import { placementOf } from '../../src/day/placement';
import { runsOf } from '../../src/screens/play/record-runs';
import { PlacementScreen } from '../../src/screens/placement/placement-screen';
import { StoreContext } from '../../src/store-context';
import { fakeStore, type FakeStore } from './fake-store';

const PROGRAMME: EventBody = { kind: 'programme', programme: DEFAULT_PROGRAMME };

let store: FakeStore;

beforeEach(() => {
  vi.stubGlobal('scrollTo', () => undefined);
  location.hash = '#/placement';
  store = fakeStore([PROGRAMME]);
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const show = () =>
  render(
    <StoreContext.Provider value={store}>
      <Notice />
      <PlacementScreen />
    </StoreContext.Provider>,
  );
const button = (name: RegExp | string) => screen.findByRole('button', { name });

async function ready() {
  await waitFor(() => expect(placementOf(store).before.value).toBeDefined());
  return placementOf(store);
}

/** Plays so many probes, all of them even, as the stand records them. */
async function probe(count: number): Promise<readonly RunBody[]> {
  const placement = await ready();
  placement.begin(DEFAULT_PROGRAMME);
  const runs: RunBody[] = [];
  for (let i = 0; i < count; i++) {
    const recorded = runsOf(placement.next(DEFAULT_PROGRAMME)!);
    runs.push(...recorded);
    await store.record(recorded);
  }
  return runs;
}

test('a probe goes to the stand as a run outside the list', async () => {
  show();
  fireEvent.click(await button('Begin'));
  await waitFor(() => expect(location.hash).toBe('#/play'));
  const session = dayListOf(store).session.value!;
  expect(session.entry).toMatchObject({ kind: 'single', probe: 1 });
  expect(session.entry.items).toHaveLength(1);
  expect(runsOf(session)).toMatchObject([{ entry: null, judge: 'player', tempo: session.tempo }]);
});

test('there are ten, each of another arpeggio, and what is passed over does not come again', async () => {
  const placement = await ready();
  await probe(3);
  const passedOver = placement.next(DEFAULT_PROGRAMME)!.entry.items[0]!;
  placement.passOver(passedOver);
  await probe(PROBES - 3);
  const items = store.todaysRuns.value.map(({ item }) => item);
  expect(new Set(items).size).toBe(PROBES);
  expect(items).not.toContain(passedOver);
  expect(placement.next(DEFAULT_PROGRAMME)).toBeNull();
});

test('an undone probe is not counted, and what was asked after it comes again', async () => {
  await probe(2);
  const placement = await ready();
  const third = placement.next(DEFAULT_PROGRAMME)!;
  expect(third.entry.probe).toBe(3);
  await store.record([{ kind: 'void', events: [store.log.at(-1)!.id] }]);
  expect(placement.next(DEFAULT_PROGRAMME)!.entry.probe).toBe(2);
});

test('the end tells how far the spread has shrunk, sets the stage reached when asked, and undoes it', async () => {
  const runs = await probe(PROBES);
  show();
  await screen.findByRole('heading', { name: 'Where you are' });
  expect(screen.getByText('After 10 runs')).toBeTruthy();
  const [before, after] = /within (\d+) per cent; now to within (\d+) per cent/
    .exec(document.body.textContent!)!
    .slice(1)
    .map(Number);
  expect(after!).toBeLessThan(before! - 8);
  expect(screen.queryByRole('button', { name: /Go on/ })).toBeNull();

  fireEvent.click(await button('Begin there'));
  await screen.findByText(/The programme begins there/);
  const { programme, lastRuns } = store.student.value;
  expect(programme!.reached).not.toBe(DEFAULT_PROGRAMME.reached);
  expect(lastRuns.size).toBe(runs.length);
  expect(screen.getByText(/The programme says so already/)).toBeTruthy();
  fireEvent.click(await button('Undo'));
  await waitFor(() => expect(store.student.value.programme!.reached).toBe('right.2'));
});

test('it may be stopped and gone on with, and tells what there is', async () => {
  await probe(4);
  show();
  expect(await screen.findByText('After 4 runs')).toBeTruthy();
  fireEvent.click(await button('Go on with run 5 of 10'));
  await waitFor(() => expect(location.hash).toBe('#/play'));
  expect(dayListOf(store).session.value!.entry.probe).toBe(5);
});

test('the next day it begins anew', async () => {
  await probe(4);
  store.nextDay();
  show();
  await screen.findByRole('heading', { name: 'Find out where you are' });
  expect(placementOf(store).next(DEFAULT_PROGRAMME)!.entry.probe).toBe(1);
});

test('nothing is probed while a hand rests or a run of the list is open', async () => {
  const list = dayListOf(store);
  await waitFor(() => expect(list.current.value).not.toBeNull());
  const open = list.current.value!;
  await list.setSession({ ...open, phase: 'rating' });
  show();
  expect(await screen.findByText(/is open on the stand/)).toBeTruthy();
  expect(screen.queryByRole('button', { name: 'Begin' })).toBeNull();
  await list.setSession(null);
  list.setSore('left');
  expect(await screen.findByText(/A hand is to rest today/)).toBeTruthy();
});
