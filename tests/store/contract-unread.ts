/** Events that can't be read: they are set aside and told, never lost, and mended by a whole copy. */
import { holds, same, until } from './check';
import { freshIn, live } from './life';
import { DAY, programme, type Promises, run, runs, World } from './world';

/** Puts events into the log that can't be read: one of a later version, then damaged ones. */
async function spoil(world: World, damaged: readonly unknown[] = []): Promise<void> {
  const records = await world.records();
  const { id, student, event } = records.at(-1)!;
  const idOf = (place: number) => id.replace(/.{4}$/, `ff${String(place).padStart(2, '0')}`);
  const newer = { ...(event as object), version: 2, kind: 'dance', steps: [1, [2, { three: 3 }]] };
  const strange = [{ ...newer, id: idOf(1) }, ...damaged];
  await world.raw(async (database) => {
    for (const [i, one] of strange.entries()) {
      const sequence = records.length + 1 + i;
      await database.add('events', { sequence, id: idOf(i + 1), student, event: one });
    }
  });
}

/** A run without its fields, one under a foreign id, and what is no object at all. */
async function damagedBy(world: World): Promise<readonly unknown[]> {
  const event = (await world.records()).at(-1)!.event as object;
  return [{ ...event, kind: 'run' }, event, 'not even an object', null];
}

/** Of a backup, without its head. */
const linesOf = async (blob: Blob): Promise<readonly string[]> =>
  (await blob.text()).split('\n').slice(1);

export const aboutUnread: Promises = {
  'newer and damaged events are set aside, told, and in the backup': async (world) => {
    await live(world);
    const student = await world.rebuilt();
    await spoil(world, await damagedBy(world));
    const store = await world.ready();
    same(store.student.value, student);
    same(
      store.unread.value.map(({ outcome, problem }) => [outcome, problem.split(':')[0]]),
      [
        ['newer', 'version 2'],
        ['damaged', 'item'],
        ['damaged', 'id'],
        ['damaged', 'not an event'],
        ['damaged', 'not an event'],
      ],
    );
    const backup = await world.backup();
    const other = new World();
    const otherStore = await other.ready();
    const preview = await otherStore.previewBackup(backup);
    const [told] = preview.students;
    same([told!.events, told!.newer, told!.damaged], [29, 1, 4]);
    await otherStore.restore(preview);
    same(otherStore.unread.value, store.unread.value);
    same(otherStore.student.value, student);
    same(await other.records(), await world.records());
    same(await linesOf(await other.backup()), await linesOf(backup));
    await other.end();
  },

  'they stay where they are when the log goes on, and behind the checkpoint': async (world) => {
    await live(world);
    await spoil(world, await damagedBy(world));
    const store = await world.ready();
    const [event] = await store.record([run()]);
    holds(event!.id > store.unread.value.at(-1)!.id, 'the new run sorts last');
    const before = store.unread.value;
    world.at += DAY;
    store.close();
    const next = await world.ready();
    const hasReached = async () => (await world.checkpoint())?.base.upTo === event!.id;
    while (!(await hasReached())) await next.kept('nothing');
    same((await world.ready()).unread.value, before);
    same((await world.records()).length, 30);
  },

  'a whole copy mends a damaged event, in every window and behind the checkpoint': async (
    world,
  ) => {
    await live(world);
    const whole = await world.backup();
    const before = await world.rebuilt();
    // A run, a correction and the name, and a run of which there will be no whole copy.
    const records = await world.records();
    const hurt = [1, 4, 8].map((place) => records[place]!);
    const lost = { ...records[5]!, id: records[5]!.id.replace(/.{4}$/, 'ffff'), sequence: 99 };
    await world.raw(async (database) => {
      for (const record of hurt) await database.put('events', { ...record, event: { id: 'gone' } });
      await database.put('events', { ...lost, event: 'gone' });
      await database.delete('kept', 'log.checkpoint');
    });
    const [store, window] = [await world.ready(), await world.ready()];
    same(
      store.unread.value.map(({ id }) => id).toSorted(),
      [...hurt, lost].map(({ id }) => id).toSorted(),
    );
    holds((await world.rebuilt()).eventCount === 21, 'three events are not read');
    await until(async () => (await world.checkpoint())?.base.unread.length === 4);
    const ofDamaged = await world.backup();
    const { mark } = await store.students.fileOf(store.students.shown.value!, null);

    const preview = await store.previewBackup(whole);
    same([freshIn(preview), preview.students[0]!.mended], [0, 3]);
    await store.restore(preview);
    await world.agrees(store);
    same(store.student.value, before);
    same(
      store.unread.value.map(({ id }) => id),
      [lost.id],
    );
    await world.inStep(window);
    same(window.unread.value, store.unread.value);
    await world.agrees(await world.ready());
    // Whoever has been handed the damaged ones gets the whole ones next.
    const next = await store.students.fileOf(store.students.shown.value!, mark);
    same(next.events, 3);

    const mended = await world.records();
    same(mended.length, 25);
    for (const file of [whole, ofDamaged]) {
      const again = await store.previewBackup(file);
      same([freshIn(again), again.students[0]!.mended], [0, 0]);
      await store.restore(again);
    }
    same(await world.records(), mended);
  },

  'a whole copy mends a damaged run of today': async (world) => {
    await (await world.ready()).record([programme(), ...runs(3)]);
    const whole = await world.backup();
    const record = (await world.records())[2]!;
    await world.raw((database) => database.put('events', { ...record, event: null }));
    const store = await world.ready();
    same([store.unread.value.length, store.todaysRuns.value.length], [1, 2]);
    await store.restore(await store.previewBackup(whole));
    same([store.unread.value.length, store.todaysRuns.value.length], [0, 3]);
    await world.agrees(store);
  },

  'what JSON cannot say is told in the backup all the same': async (world) => {
    await live(world);
    const circle: { self?: unknown } = {};
    circle.self = circle;
    const deep = JSON.parse(`${'['.repeat(50)}${']'.repeat(50)}`) as unknown;
    const long = { text: 'x'.repeat(30_000) };
    const own = JSON.parse('{"__proto__":{"polluted":true}}') as unknown;
    const strange = [circle, 12n, undefined, deep, long, own, { constructor: 1 }, Number.NaN];
    await spoil(world, strange);
    const other = new World();
    const store = await other.ready();
    const preview = await store.previewBackup(await world.backup());
    const [told] = preview.students;
    same([told!.newer, told!.damaged], [1, strange.length]);
    await store.restore(preview);
    same(store.unread.value.length, 1 + strange.length);
    same(store.student.value, await world.rebuilt());
    holds(!('polluted' in {}), 'no prototype was touched');
    await other.end();
  },
};
