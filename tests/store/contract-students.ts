/** Several students on one device. */
import type { StoreError } from '../../src/store/errors';
import type { Device } from '../../src/store/store';
import { holds, rejection, same, until } from './check';
import { DAY, programme, type Promises, run, runs, type World } from './world';

const listOf = ({ students }: Device) =>
  students.listed.value.map(({ name, isArchived }) => (isArchived ? `(${name})` : name));

/** Ada with three runs, then Ben with five, who is shown. Their ids. */
async function two(world: World): Promise<readonly [store: Device, ada: string, ben: string]> {
  const store = await world.ready();
  await store.record([programme(), { kind: 'name', name: 'Ada' }, ...runs(3)]);
  const ada = store.students.shown.value!;
  await store.students.add('Ben');
  const ben = store.students.shown.value!;
  await store.current.value.record([programme({ minutes: 30 }), ...runs(5)]);
  return [store, ada, ben];
}

export const aboutStudents: Promises = {
  'one student alone is a list of one, and nothing is kept of the list': async (world) => {
    const store = await world.ready();
    same(listOf(store), []);
    await store.record([programme(), { kind: 'name', name: 'Ada' }]);
    same(listOf(store), ['Ada']);
    same(await world.raw((database) => database.get('kept', 'log.students')), undefined);
  },

  'each has a record of its own, and is shown as it was left': async (world) => {
    const [store, ada, ben] = await two(world);
    same(listOf(store), ['Ada', 'Ben']);
    await world.agrees(store, ben);
    same(store.todaysRuns.value.length, 5);
    await store.students.show(ada);
    await world.agrees(store, ada);
    same([store.todaysRuns.value.length, store.student.value.programme?.minutes], [3, 20]);
    await store.students.show(ben);
    await world.agrees(store, ben);
    same(store.student.value.programme?.minutes, 30);
    same((await store.current.value.runsOf(run().item)).length, 0);
  },

  'opens with the one who was shown last': async (world) => {
    const [store, ada] = await two(world);
    await store.students.show(ada);
    const again = await world.ready();
    same([again.students.shown.value, listOf(again)], [ada, ['Ada', 'Ben']]);
    await world.agrees(again, ada);
  },

  'a screen that is about one student goes on recording for that one': async (world) => {
    const [store, ada, ben] = await two(world);
    const ofBen = store.current.value;
    await store.students.show(ada);
    holds(store.current.value !== ofBen, 'another store');
    const [event] = await ofBen.record([run()]);
    same(event!.student, ben);
    same((await ofBen.runsOf(run().item)).length, 1);
    same((await store.current.value.runsOf(run().item)).length, 0);
    await world.agrees(store, ada);
    await store.students.show(ben);
    await world.agrees(store, ben);
  },

  'the store stays the same while the same student is shown': async (world) => {
    const store = await world.ready();
    const { value: first } = store.current;
    await store.record([programme()]);
    await store.record(runs(2));
    holds(store.current.value === first, 'no other student, no other store');
  },

  'what is begun and wished for today is of one student, preferences are of the device': async (
    world,
  ) => {
    const [store, ada, ben] = await two(world);
    const ofBen = store.current.value;
    await ofBen.keep('session', 'of Ben');
    await ofBen.keep('examination', 'of Ben');
    await ofBen.keep('preferences', 'of all');
    await store.students.show(ada);
    const ofAda = store.current.value;
    same([await ofAda.kept('session'), await ofAda.kept('examination')], [undefined, undefined]);
    await ofAda.keep('session', 'of Ada');
    await ofBen.keep('today', 'wish of Ben');
    same([await ofAda.kept('session'), await ofAda.kept('today')], ['of Ada', undefined]);
    same(await ofBen.kept('session'), 'of Ben');
    same(await ofAda.kept('preferences'), 'of all');
    await store.students.show(ben);
    const again = store.current.value;
    same([await again.kept('session'), await again.kept('today')], ['of Ben', 'wish of Ben']);
    same(await ofAda.kept('session'), 'of Ada');
  },

  'each has a checkpoint, and opening reads only that of the one who is shown': async (world) => {
    await world.practise(3);
    const store = await world.ready();
    const ada = store.students.shown.value!;
    await store.students.add('Ben');
    same(await world.checkpoint(), null);
    await store.current.value.record([programme(), ...runs(4)]);
    const ben = store.students.shown.value!;
    await store.students.show(ada);
    const wanted = await world.rebuilt(ada);
    // What is not there any more can only come from the checkpoint.
    const old = IDBKeyRange.upperBound(10);
    await world.raw((database) => database.delete('events', old));
    same((await world.ready()).student.value, wanted);
    await store.students.show(ben);
    await world.agrees(store, ben);
  },

  'a correction of what the checkpoint of another student holds': async (world) => {
    const ids = await world.practise(3);
    const store = await world.ready();
    const [ofAda, ada] = [store.current.value, store.students.shown.value!];
    await store.students.add('Ben');
    await ofAda.record([{ kind: 'void', events: [ids[2]!] }]);
    await store.students.show(ada);
    await world.agrees(store, ada);
  },

  'two windows agree on who is shown and who there is': async (world) => {
    const other = await world.ready();
    const [store, ada, ben] = await two(world);
    await until(() => other.student.value.eventCount === 7 && listOf(other).includes('Ben'));
    await world.agrees(other, ben);
    await other.students.show(ada);
    await until(() => store.students.shown.value === ada);
    await world.agrees(store, ada);
    await other.students.rename(ben, 'Benjamin');
    await other.students.archive(ben, true);
    await until(() => listOf(store)[1] === '(Benjamin)');
  },

  'archived and taken back: the record stays as it is': async (world) => {
    const [store, ada, ben] = await two(world);
    await store.students.archive(ben, true);
    same([store.students.shown.value, listOf(store)], [ada, ['Ada', '(Ben)']]);
    await store.students.archive(ben, false);
    same([store.students.shown.value, listOf(store)], [ada, ['Ada', 'Ben']]);
    await store.students.archive(ben, true);
    await store.students.show(ben);
    same(listOf(store), ['Ada', 'Ben']);
    await world.agrees(store, ben);
  },

  'removed: nothing of it stays, and the others are as they were': async (world) => {
    const [store, ada, ben] = await two(world);
    const other = await world.ready();
    const ofBen = store.current.value;
    await ofBen.keep('session', 'of Ben');
    const highest = (await world.records()).at(-1)!.sequence;
    await store.students.remove(ben);
    same([store.students.shown.value, listOf(store)], [ada, ['Ada']]);
    await world.agrees(store, ada);
    await until(() => other.students.shown.value === ada);
    await world.agrees(other, ada);
    const records = await world.records();
    holds(!records.some(({ student }) => student === ben), 'no event of Ben');
    holds(records.at(-1)!.sequence > highest, 'the numbers go on');
    const keys = await world.raw((database) => database.getAllKeys('kept'));
    same(
      keys.filter((key) => key.includes(ben)),
      [],
    );
    same(((await rejection(ofBen.record([run()]))) as StoreError).kind, 'removed');
    await store.current.value.record([run()]);
    await world.agrees(store, ada);
    await until(() => other.student.value.eventCount === 6);
    await world.agrees(other, ada);
  },

  'removed from among others: only its own events go': async (world) => {
    const [store, ada, ben] = await two(world);
    const ofBen = store.current.value;
    await store.students.show(ada);
    const ofAda = store.current.value;
    for (let i = 0; i < 3; i++) {
      await ofAda.record(runs(2));
      await ofBen.record([run()]);
    }
    await store.students.remove(ben);
    const students = (await world.records()).map(({ student }) => student);
    same([students.length, new Set(students)], [11, [ada]]);
    await world.agrees(store, ada);
  },

  'the only student cannot be removed, and its record stays': async (world) => {
    const store = await world.ready();
    await store.record([programme(), run()]);
    await rejection(store.students.remove(store.students.shown.value!));
    await world.agrees(store);
  },

  'a backup holds all students, and brings them all back': async (world) => {
    const [store, ada, ben] = await two(world);
    const students = [await world.rebuilt(ada), await world.rebuilt(ben)];
    const backup = new File([await store.backup()], 'log.arpeggiary');
    await store.wipe();
    const preview = await store.previewBackup(backup);
    same(
      preview.students.map(({ name, runs: count }) => [name, count]),
      [
        ['Ada', 3],
        ['Ben', 5],
      ],
    );
    await store.restore(preview);
    same([store.students.shown.value, listOf(store)], [ada, ['Ada', 'Ben']]);
    same(store.student.value, students[0]);
    await store.students.show(ben);
    same(store.student.value, students[1]);
  },

  'days go on for one while another is shown': async (world) => {
    const [store, ada, ben] = await two(world);
    world.at += DAY;
    await world.settled(store);
    await store.current.value.record(runs(2));
    await world.agrees(store, ben);
    await store.students.show(ada);
    same(store.todaysRuns.value, []);
    await world.agrees(store, ada);
  },
};
