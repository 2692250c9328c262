/** Backup, restore, and files from one device to another. */
import { planDay } from '../../shared/planning/today';
import { holds, rejection, same } from './check';
import { freshIn, live } from './life';
import { DAY, programme, type Promises, run, runs, World } from './world';

export const aboutExchange: Promises = {
  'backup, erased storage, restore: the same student and the same plan': async (world) => {
    await live(world);
    const store = await world.ready();
    const plan = () => planDay(store.dayStart.value, store.today.value, 20);
    const before = [store.student.value, plan()];
    const backup = new File([await store.backup()], 'log.arpeggiary');
    const student = store.students.shown.value;
    same(await store.kept('last-backup'), '2026-11-28');
    await store.wipe();
    same(store.student.value.eventCount, 0);

    const preview = await store.previewBackup(backup);
    const { made, students, hasGap } = preview;
    same([made, freshIn(preview), hasGap], [new Date(world.at).toISOString(), 24, false]);
    same(students, [
      {
        student,
        name: 'Ada “Königin” 🎹',
        isKnown: false,
        events: 24,
        runs: 15,
        firstDay: '2026-11-25',
        lastDay: '2026-11-28',
        fresh: 24,
        mended: 0,
        newer: 0,
        damaged: 0,
      },
    ]);
    await store.restore(preview);
    same([store.student.value, plan()], before);
    await world.agrees(store);
    await world.agrees(await world.ready());
  },

  'an empty log takes over the student, and goes on as that student': async (world) => {
    await live(world);
    const other = new World();
    const store = await other.ready();
    await store.restore(await store.previewBackup(await world.backup()));
    const [first] = await world.events();
    const [event] = await store.record([run()]);
    same(event!.student, first!.student);
    holds(event!.device !== first!.device, 'on a device of its own');
    await other.agrees(store);
    await other.end();
  },

  'restoring twice changes nothing': async (world) => {
    await live(world);
    const store = await world.ready();
    const before = await world.records();
    const preview = await store.previewBackup(await world.backup());
    same([preview.students[0]!.events, freshIn(preview)], [24, 0]);
    await store.restore(preview);
    same(await world.records(), before);
    await world.agrees(store);
  },

  'a preview that is out of date doubles nothing': async (world) => {
    await live(world);
    const backup = await world.backup();
    const store = await world.ready();
    await store.wipe();
    const preview = await store.previewBackup(backup);
    await Promise.all([store.restore(preview), store.restore(preview)]);
    same((await world.records()).length, 24);
    await world.agrees(store);
  },

  'two devices merge to the same state, whichever takes in the other': async (world) => {
    await live(world);
    const [other, store] = [new World(), await world.ready()];
    other.at = world.at - 30 * 60_000;
    const otherStore = await other.ready();
    await otherStore.restore(await otherStore.previewBackup(await world.backup()));
    for (const [device, some] of [
      [store, runs(3)],
      [otherStore, runs(5).toReversed()],
      [store, runs(2)],
    ] as const) {
      world.at += 60_000;
      other.at += 61_000;
      await device.record(some);
    }
    const [mine, theirs] = [await world.backup(), await other.backup()];
    await store.restore(await store.previewBackup(theirs));
    await otherStore.restore(await otherStore.previewBackup(mine));
    same(otherStore.student.value, store.student.value);
    same(otherStore.todaysRuns.value, store.todaysRuns.value);
    await world.agrees(store);
    await other.agrees(otherStore);
    await other.end();
  },

  'older events slip in before the checkpoint, in both windows': async (world) => {
    const begin = world.at;
    await world.practise(1);
    const other = new World();
    other.at = begin + 60_000;
    const otherStore = await other.ready();
    await otherStore.restore(await otherStore.previewBackup(await world.backup()));
    await otherStore.record(runs(4));
    await world.practise(2);
    const [store, window] = [await world.ready(), await world.ready()];
    const { length } = await world.records();
    const preview = await store.previewBackup(await other.backup());
    same(freshIn(preview), 4);
    await store.restore(preview);
    same((await world.records()).length, length + 4);
    await world.agrees(store);
    await world.inStep(window);
    await world.agrees(await world.ready());
    await other.end();
  },

  'a file of what is new follows the one before, and says so where that is missing': async (
    world,
  ) => {
    await live(world);
    const store = await world.ready();
    const { students } = store;
    const student = students.shown.value!;
    same(await students.handOvers(student), []);
    const whole = await students.fileOf(student, null);
    same(whole.events, 24);
    await students.noteHandOver(student, 'teacher', whole.mark!);
    const [told] = await students.handOvers(student);
    same([told!.receiver, told!.day], ['teacher', '2026-11-28']);
    const nothing = await students.fileOf(student, told!.mark);
    same([nothing.events, nothing.mark], [0, null]);
    await store.record(runs(3));
    const fresh = await students.fileOf(student, told!.mark);
    same(fresh.events, 3);

    const [teacher, stranger] = [new World(), new World()];
    const teachersStore = await teacher.ready();
    const receive = async ({ file }: typeof whole) => {
      const preview = await teachersStore.previewBackup(new File([file], 'x'));
      await teachersStore.restore(preview);
      return preview;
    };
    same((await receive(whole)).hasGap, false);
    const second = await receive(fresh);
    same([second.hasGap, freshIn(second), second.students[0]!.isKnown], [false, 3, true]);
    same(teachersStore.student.value, store.student.value);
    const empty = await receive(nothing);
    same([empty.hasGap, empty.students], [false, []]);
    const strange = await (await stranger.ready()).previewBackup(new File([fresh.file], 'x'));
    same([strange.hasGap, strange.students[0]!.name], [true, null]);
    await teacher.end();
    await stranger.end();
  },

  'what came in from elsewhere is new to a receiver too': async (world) => {
    await live(world);
    const store = await world.ready();
    const { students } = store;
    const student = students.shown.value!;
    const { mark } = await students.fileOf(student, null);
    const other = new World();
    other.at = world.at - 2 * DAY;
    const otherStore = await other.ready();
    await otherStore.restore(await otherStore.previewBackup(await world.backup()));
    await otherStore.record(runs(2));
    await store.restore(await store.previewBackup(await other.backup()));
    same((await students.fileOf(student, mark)).events, 2);
    await other.end();
  },

  'the record of somebody else becomes another student, and nothing is mixed': async (world) => {
    await live(world);
    const other = new World();
    const store = await other.ready();
    await store.record([{ kind: 'name', name: 'Ben' }, run()]);
    const ben = store.students.shown.value!;
    const preview = await store.previewBackup(await world.backup());
    same(preview.students[0]!.isKnown, false);
    await store.restore(preview);
    const names = () => store.students.listed.value.map(({ name }) => name);
    same([store.students.shown.value, names()], [ben, ['Ben', 'Ada “Königin” 🎹']]);
    await other.agrees(store, ben);
    const ada = store.students.listed.value[1]!.id;
    await store.students.show(ada);
    await other.agrees(store, ada);
    same(store.student.value, await world.rebuilt());
    await other.end();
  },

  'a long record of somebody else leaves the one who is shown as it is': async (world) => {
    const store = await world.ready();
    await store.record([programme(), ...runs(3)]);
    const shown = store.students.shown.value!;
    const other = new World();
    const otherStore = await other.ready();
    await otherStore.record([programme(), ...runs(700)]);
    await otherStore.record(runs(700));
    await store.restore(await store.previewBackup(await other.backup()));
    await world.agrees(store, shown);
    same(store.students.listed.value.length, 2);
    await other.end();
  },

  'a file that is no backup is refused with the reason': async (world) => {
    const store = await world.ready();
    const refused = async (...parts: BlobPart[]) => {
      const error = await rejection(store.previewBackup(new File(parts, 'x.arpeggiary')));
      same(error.name, 'BackupError');
      return error.message;
    };
    holds((await refused()).includes('empty'), 'empty');
    holds((await refused('{"format":"else"}\n')).includes('not an Arpeggiary'), 'another format');
    holds((await refused(new Uint8Array([0xff, 0xfe, 0]))).includes('no text'), 'not UTF-8');
    await live(world);
    const lines = (await (await world.backup()).text()).split('\n');
    const cut = await refused(`${lines.slice(0, 9).join('\n')}\n{"id":"01`);
    holds(cut.includes('after 8 of 24 events'), cut);
    const damaged = await refused(
      lines.with(4, lines[4]!.replace('"tempo":', '"temp":')).join('\n'),
    );
    holds(damaged.includes('Line 5') && damaged.includes('tempo'), damaged);
  },
};
