import { expect, test, vi } from 'vitest';
import type { RunBody } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { dayListOf } from '../../src/day/day-list';
import { newSession, readSession, SESSION_KEY } from '../../src/day/session';
import { fakeStore } from './fake-store';

const PROGRAMME = { kind: 'programme', programme: { ...DEFAULT_PROGRAMME, minutes: 5 } } as const;

async function readyList(store = fakeStore([PROGRAMME])) {
  const list = dayListOf(store);
  await vi.waitFor(() => expect(list.isRead.value).toBe(true));
  return { store, list };
}

const runsOf = (items: readonly string[], entry: string): RunBody[] =>
  items.map((item) => ({
    kind: 'run',
    item: item as RunBody['item'],
    tempo: 160,
    fluency: 3,
    pedal: false,
    judge: 'player',
    entry,
  }));

test('an entry is done when all of its items have a run under its key', async () => {
  const { store, list } = await readyList();
  const { entry } = list.next.value!;
  await store.record(runsOf(entry.items.slice(0, 4), entry.key));
  expect(list.entries.value[0]!.state).toBe('open');
  expect(list.current.value!.entry.items).toEqual(entry.items.slice(4));
  await store.record(runsOf(entry.items.slice(4), entry.key));
  expect(list.entries.value[0]!.state).toBe('done');
  expect(list.next.value).toBe(list.entries.value[1]);
});

test('BASIS: what is played outside the list counts for it until the list is begun', async () => {
  const { store, list } = await readyList();
  const first = list.next.value!;
  const outside = (item: RunBody['item'], tempo: number) =>
    store.record([{ ...runsOf([item], '')[0]!, tempo, fluency: 4, entry: null }]);
  await outside('d.major-6.right.2', 480);
  const followed = list.next.value!;
  expect(followed.entry.tempo).toBeGreaterThan(first.entry.tempo);
  expect(store.dayStart.value.work.size).toBe(0);
  await store.record(runsOf(followed.entry.items.slice(0, 1), followed.entry.key));
  const plan = list.plan.value;
  await outside('e.major-6.right.2', 480);
  expect(list.plan.value).toEqual(plan);
});

test('more time makes a longer list today and leaves tomorrow alone', async () => {
  const { store, list } = await readyList();
  const before = list.entries.value.length;
  list.setMinutes(15);
  expect(list.entries.value.length).toBeGreaterThan(before);
  expect(list.plan.value!.minutes).toBe(15);
  store.nextDay();
  expect(list.minutes.value).toBe(5);
});

test('what is left out today can be put back, and the day is not planned anew for it', async () => {
  const { list } = await readyList();
  const plan = list.plan.value;
  const { key } = list.next.value!.entry;
  list.leaveOut(key);
  expect(list.plan.value).toBe(plan);
  expect(list.entries.value[0]!.state).toBe('left out');
  expect(list.next.value!.entry.key).not.toBe(key);
  list.putBack(key);
  expect(list.next.value!.entry.key).toBe(key);
});

test('what is open comes back after a reload, to the same chord and the same ratings', async () => {
  const { store, list } = await readyList();
  const { entry, open } = list.next.value!;
  const item = entry.items[2]!;
  const session = {
    ...newSession(store.today.value, entry, open),
    at: 2,
    phase: 'rating',
    pedal: true,
    ratings: { [item]: { fluency: 1, tempo: 120 } },
  } as const;
  await list.setSession(session);
  const reloaded = fakeStore([PROGRAMME], { [SESSION_KEY]: await store.kept(SESSION_KEY) });
  expect((await readyList(reloaded)).list.session.value).toEqual(session);
});

test('what was open on an earlier day does not come back', async () => {
  const { store, list } = await readyList();
  const { entry, open } = list.next.value!;
  const session = newSession(store.today.value, entry, open);
  const later = fakeStore([PROGRAMME], { [SESSION_KEY]: session });
  later.nextDay();
  expect((await readyList(later)).list.session.value).toBeNull();
});

test('nor does it on the next day where the app was left open overnight', async () => {
  const { store, list } = await readyList();
  const { entry, open } = list.next.value!;
  const leave = list.standUp();
  await list.setSession({ ...newSession(store.today.value, entry, open), phase: 'rating' });
  leave();
  expect(list.session.value!.phase).toBe('rating');
  store.nextDay();
  expect(list.session.value).toBeNull();
  list.standUp();
  expect(list.session.value).toBeNull();
  expect(list.current.value!.day).toBe(store.today.value);
});

test('who plays through midnight plays on, and may leave the stand and come back', async () => {
  const { store, list } = await readyList();
  const { entry, open } = list.next.value!;
  const leave = list.standUp();
  await list.setSession({ ...newSession(store.today.value, entry, open), at: 3 });
  store.nextDay();
  expect(list.session.value!.at).toBe(3);
  leave();
  expect(list.session.value).toMatchObject({ at: 3, day: store.today.value });
  expect(readSession(await store.kept(SESSION_KEY))!.day).toBe(store.today.value);
});

test('ratings that reached the log before the page died are not asked for again', async () => {
  const { store, list } = await readyList();
  const { entry, open } = list.next.value!;
  await list.setSession({ ...newSession(store.today.value, entry, open), phase: 'rating' });
  const [first] = await store.record(runsOf(entry.items, entry.key));
  expect(list.session.value).toBeNull();
  expect(list.current.value!.entry.key).not.toBe(entry.key);
  await store.record([{ kind: 'void', events: [first!.id] }]);
  expect(list.next.value!.open).toEqual([first!.kind === 'run' ? first!.item : null]);
});

test('a kept session that is damaged in any way is none', () => {
  const { entry, open } = {
    entry: {
      key: 'd.right.2.1',
      kind: 'round',
      note: 'd',
      way: 'right.2',
      items: ['d.major-53.right.2', 'd.minor-53.right.2'],
    },
    open: 2,
  } as const;
  const good = {
    day: '2026-11-25',
    entry,
    at: 1,
    phase: 'playing',
    tempo: 160,
    pedal: false,
    ratings: {},
  };
  expect(readSession(good)).toEqual(good);
  const damaged: unknown[] = [
    null,
    'session',
    { ...good, at: open },
    { ...good, at: -1 },
    { ...good, tempo: 1e9 },
    { ...good, phase: 'ready' },
    { ...good, entry: { ...entry, items: [] } },
    { ...good, entry: { ...entry, items: ['h.major-53.right.2'] } },
    { ...good, ratings: { 'd.major-53.right.2': { fluency: 9, tempo: null } } },
  ];
  for (const one of damaged) expect(readSession(one)).toBeNull();
});

test('a second sitting has a list of its own, which goes on from what was played', async () => {
  const { store, list } = await readyList();
  const first = list.entries.value;
  for (const { entry } of first) await store.record(runsOf(entry.items, entry.key));
  expect(list.next.value).toBeNull();
  list.makeAnother();
  const second = list.entries.value;
  expect(second.length).toBeGreaterThan(0);
  expect(second.every(({ state }) => state === 'open')).toBe(true);
  const { entry } = list.next.value!;
  const plan = list.plan.value;
  await store.record(runsOf(entry.items, entry.key));
  expect(list.plan.value).toEqual(plan);
  expect(list.entries.value[0]!.state).toBe('done');
  store.nextDay();
  expect(list.sitting.value).toBe(1);
});

test('in the week before the date the days have less of the minutes', async () => {
  const date = '2026-11-27';
  const eve = {
    kind: 'programme',
    programme: { ...DEFAULT_PROGRAMME, minutes: 40, date },
  } as const;
  const { store, list } = await readyList(fakeStore([eve]));
  const minutes = [list.minutes.value];
  store.nextDay();
  minutes.push(list.minutes.value);
  store.nextDay();
  minutes.push(list.minutes.value);
  store.nextDay();
  expect([...minutes, list.minutes.value]).toEqual([20, 16, 12, 40]);
});
