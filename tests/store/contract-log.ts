/** Recording and reading. */
import { isEventId, isStudentId } from '../../shared/formats/event';
import { holds, rejection, same } from './check';
import { programme, type Promises, run, runs } from './world';

const isContiguous = (sequences: readonly number[]): boolean =>
  sequences.every((sequence, i) => sequence === i + 1);

const areRising = (ids: readonly string[]): boolean =>
  ids.every((id, i) => i === 0 || id > ids[i - 1]!);

export const aboutLog: Promises = {
  'begins empty and ready': async (world) => {
    const store = await world.ready();
    same(store.student.value.eventCount, 0);
    same([store.todaysRuns.value, store.unread.value, store.problem.value], [[], [], null]);
    same(await world.records(), []);
  },

  'shows what was recorded, and again after opening anew': async (world) => {
    const store = await world.ready();
    const events = await store.record([programme(), ...runs(3)]);
    same(store.todaysRuns.value, events.slice(1));
    await world.agrees(store);
    const again = await world.ready();
    same(again.todaysRuns.value, events.slice(1));
    await world.agrees(again);
  },

  'gives each event its sequence, id, time, day, device and student': async (world) => {
    const store = await world.ready();
    await store.record([programme(), run()]);
    world.at += 1000;
    await store.record([run()]);
    const records = await world.records();
    same(
      records.map(({ sequence }) => sequence),
      [1, 2, 3],
    );
    const events = await world.events();
    same(
      events.map(({ at, day }) => [at, day]),
      [
        [world.at - 1000, '2026-11-25'],
        [world.at - 1000, '2026-11-25'],
        [world.at, '2026-11-25'],
      ],
    );
    holds(
      events.every(({ id }) => isEventId(id)),
      'ids are version 7 UUIDs',
    );
    same(new Set(events.map(({ device }) => device)).size, 1);
    same(new Set(events.map(({ student }) => student)).size, 1);
    holds(isStudentId(events[0]!.student) && isStudentId(events[0]!.device), 'version 4 UUIDs');
  },

  'an id carries the time of its event': async (world) => {
    const store = await world.ready();
    const [event] = await store.record([run()]);
    same(parseInt(event!.id.replaceAll('-', '').slice(0, 12), 16), world.at);
  },

  'what is recorded last sorts last, also when the clock was put back': async (world) => {
    const store = await world.ready();
    for (const step of [0, 0, -5000, 1, -1, 60_000, -3_600_000]) {
      world.at += step;
      await store.record(runs(2));
    }
    holds(areRising((await world.records()).map(({ id }) => id)), 'ids rise with the sequence');
    await world.agrees(store);
  },

  'undo is one more event': async (world) => {
    const store = await world.ready();
    const [, first, second] = await store.record([programme(), run(), run({ fluency: 0 })]);
    await store.record([{ kind: 'void', events: [second!.id] }]);
    same(store.todaysRuns.value, [first]);
    same(store.student.value.work.get('2026-11-25')?.runs, 1);
    same(await store.runsOf('d.major-6.right.2'), [first]);
    same((await world.records()).length, 4);
    await world.agrees(store);
  },

  'all of a record call or none: an event that is no event': async (world) => {
    const store = await world.ready();
    await store.record([programme()]);
    const error = await rejection(store.record([run(), run({ tempo: 3 }), run()]));
    same([error.name, (error as { kind?: string }).kind], ['StoreError', 'invalid']);
    holds(error.message.includes('tempo'), 'the message names the field');
    same((await world.records()).length, 1);
    await store.record([run()]);
    await world.agrees(store);
  },

  'recording nothing is nothing': async (world) => {
    const store = await world.ready();
    same(await store.record([]), []);
    same(await world.records(), []);
  },

  'records made before the log has been read are not lost': async (world) => {
    const store = world.open();
    const [first, second] = await Promise.all([store.record([run()]), store.record([run()])]);
    same(store.todaysRuns.value, [...first, ...second]);
    await world.agrees(store);
  },

  'finds the runs of an item among near misses': async (world) => {
    const store = await world.ready();
    const near = ['d.major-64', 'db.major-6', 'd.minor-6'] as const;
    await store.record(near.map((arpeggio) => run({ item: `${arpeggio}.right.2` })));
    await store.record([run({ item: 'd.major-6.right.4' }), run({ item: 'd.major-6.left.2' })]);
    same(await store.runsOf('d.major-6.right.2'), []);
    const [own] = await store.record([run()]);
    same(await store.runsOf('d.major-6.right.2'), [own]);
  },

  'keeps small records apart from near-miss keys and from its own': async (world) => {
    const store = await world.ready();
    const draft = { rows: [{ item: 'd.major-6.right.2', fluency: 2 }], at: new Date(0) };
    await store.keep('draft', draft);
    for (const key of ['Draft', 'draft ', 'draft\0', 'draf', ''])
      same(await store.kept(key), undefined);
    same(await store.kept('draft'), draft);
    await store.keep('draft', null);
    same(await store.kept('draft'), null);
    await store.keep('draft', undefined);
    same(await store.kept('draft'), undefined);
    const error = await rejection(store.keep('log.student', 'me'));
    same(error.name, 'RangeError');
    same((await rejection(store.kept('log.student'))).name, 'RangeError');
  },

  'two windows that record at once: contiguous, unique, and both see all': async (world) => {
    const [one, other] = [await world.ready(), await world.ready()];
    await Promise.all(
      Array.from({ length: 25 }, (_, i) => (i % 2 ? one : other).record(runs(1 + (i % 3)))),
    );
    const records = await world.records();
    holds(isContiguous(records.map(({ sequence }) => sequence)), 'sequences are contiguous');
    holds(areRising(records.map(({ id }) => id)), 'ids are unique and rise');
    same(new Set(records.map(({ student }) => student)).size, 1, 'students');
    await world.inStep(one);
    await world.inStep(other);
  },

  'a second window is told of a record, an undo and a name': async (world) => {
    const [one, other] = [await world.ready(), await world.ready()];
    const [event] = await one.record([run(), { kind: 'name', name: 'Ada' }]);
    await world.inStep(other);
    same(other.todaysRuns.value, [event]);
    await other.record([{ kind: 'void', events: [event!.id] }]);
    await world.inStep(one);
    same([one.todaysRuns.value, one.student.value.name], [[], 'Ada']);
  },
};
