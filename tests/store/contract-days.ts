/** The calendar, the checkpoint, and records that can't be read. */
import { CHECKPOINT } from '../../src/store/schema';
import { holds, same, until } from './check';
import { comeBack, DAY, programme, type Promises, run, runs } from './world';

export const aboutDays: Promises = {
  'the start of the day leaves out the runs of today and nothing else': async (world) => {
    const store = await world.ready();
    await store.record([programme(), ...runs(3)]);
    world.at += DAY;
    comeBack();
    await until(() => store.today.value === '2026-11-26');
    same(store.todaysRuns.value, []);
    await store.record([{ kind: 'aside', item: 'd.major-6.right.2', aside: true }, ...runs(2)]);
    same(store.dayStart.value.work.has('2026-11-26'), false);
    same(store.dayStart.value.aside.size, 1);
    same(store.todaysRuns.value.length, 2);
    await world.agrees(store);
  },

  'the start of the day stays the same object while runs come in': async (world) => {
    const store = await world.ready();
    await store.record([programme(), run()]);
    const before = store.dayStart.value;
    await store.record(runs(2));
    holds(store.dayStart.value === before, 'the plan need not be made anew');
  },

  'a run recorded after midnight belongs to the new day at once': async (world) => {
    world.at = new Date(2026, 10, 25, 23, 59, 50).getTime();
    const store = await world.ready();
    await store.record([programme(), run()]);
    world.at += 20_000;
    const [event] = await store.record([run()]);
    same([event!.day, store.today.value], ['2026-11-26', '2026-11-26']);
    same(store.todaysRuns.value, [event]);
    await world.agrees(store);
  },

  'a clock put back to a day that was folded': async (world) => {
    await world.practise(3);
    world.at -= 2 * DAY;
    const store = await world.ready();
    same(store.today.value, '2026-11-26');
    same(store.todaysRuns.value.length, 5);
    await store.record(runs(1));
    await world.agrees(store);
  },

  'the day and its runs change at once, also where the log is read anew for it': async (world) => {
    await world.practise(3);
    const store = await world.ready();
    const shown: (readonly [string, number])[] = [];
    const stop = store.today.subscribe((day) => shown.push([day, store.todaysRuns.value.length]));
    world.at -= 2 * DAY;
    await world.settled(store);
    stop();
    same(shown, [
      ['2026-11-28', 0],
      ['2026-11-26', 5],
    ]);
    await world.agrees(store);
  },

  'opens from the checkpoint, without what lies before it': async (world) => {
    await world.practise(3);
    const wanted = await world.rebuilt();
    const { base } = (await world.checkpoint())!;
    holds(!base.state.work.has('2026-11-28'), 'nothing of today is folded');
    // What is not there any more can only come from the checkpoint.
    await world.raw((database) => database.delete('events', IDBKeyRange.upperBound(10)));
    const store = await world.ready();
    same(store.student.value, wanted);
  },

  'a day after the checkpoint is added to it': async (world) => {
    await world.practise(2);
    const store = await world.ready();
    await store.record([...runs(4), { kind: 'name', name: 'Ada' }]);
    await world.agrees(store);
    await world.agrees(await world.ready());
  },

  'a correction of what the checkpoint holds': async (world) => {
    const ids = await world.practise(3);
    const store = await world.ready();
    await store.record([{ kind: 'void', events: [ids[2]!, ids[7]!] }]);
    await world.agrees(store);
    await world.agrees(await world.ready());
  },

  'a correction of what the checkpoint holds, made in another window': async (world) => {
    const ids = await world.practise(3);
    const [store, other] = [await world.ready(), await world.ready()];
    await other.record([{ kind: 'void', events: [ids[0]!] }]);
    await world.inStep(store);
  },

  'a checkpoint of another version of the app is not used': async (world) => {
    await world.practise(2);
    await world.raw(async (database) => {
      const head = (await database.get('kept', CHECKPOINT)) as object;
      await database.put('kept', { ...head, version: 'other', state: null }, CHECKPOINT);
    });
    await world.agrees(await world.ready());
  },

  'a long log is read in pieces': async (world) => {
    const store = await world.ready();
    await store.record([programme()]);
    for (let i = 0; i < 3; i++) await store.record(runs(900));
    world.at += DAY;
    const again = world.open();
    const seen = new Set<string>();
    const stop = again.status.subscribe((status) => seen.add(status));
    await until(() => again.status.value === 'ready');
    stop();
    same([...seen], ['opening', 'reading', 'ready']);
    await world.agrees(again);
  },

  'sees what came in without a word, when the person comes back': async (world) => {
    const store = await world.ready();
    await store.record([programme(), run()]);
    const [last] = (await world.records()).slice(-1);
    const id = last!.id.replace(/.$/, (digit) => (digit === 'f' ? 'e' : 'f'));
    const event = { ...(last!.event as object), id };
    await world.raw((database) => database.add('events', { ...last!, sequence: 3, id, event }));
    comeBack();
    await until(() => store.todaysRuns.value.length === 2);
    await world.agrees(store);
  },
};
