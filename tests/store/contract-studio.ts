/** How all students of a device stand. */
import type { StudentId } from '../../shared/log/events';
import { studioFigures } from '../../shared/planning/studio';
import type { Device, Overview } from '../../src/store/store';
import { holds, same } from './check';
import { DAY, programme, type Promises, run, runs, World } from './world';

const idsOf = ({ students }: Device) => students.listed.value.map(({ id }) => id);

/** What is told of some students, in the order in which it is told. */
async function overlook(store: Device, students = idsOf(store)): Promise<readonly Overview[]> {
  const told: Overview[] = [];
  const { signal: over } = new AbortController();
  const today = store.today.value;
  const tell = (one: Overview) => told.push(one);
  await store.students.overlook({ students, today, tell, over });
  return told;
}

/** What is told is what the whole log says, for each. */
async function agrees(world: World, store: Device): Promise<void> {
  const told = await overlook(store);
  same(
    told.map(({ student }) => student),
    idsOf(store),
  );
  for (const { student, figures } of told) {
    same(figures, studioFigures(await world.rebuilt(student), store.today.value), student);
  }
}

/** Three students with some days of practice each, the last of whom is shown. */
async function three(world: World): Promise<Device> {
  const store = await world.ready();
  await store.record([programme({ date: '2027-02-01' }), { kind: 'name', name: 'Ada' }]);
  for (const [i, name] of ['Ben', 'Cleo'].entries()) {
    await store.current.value.record(runs(4 + i));
    world.at += DAY;
    await world.settled(store);
    await store.students.add(name);
  }
  await store.current.value.record([programme({ minutes: 30 }), ...runs(3)]);
  return store;
}

const parkedOf = async (world: World): Promise<readonly StudentId[]> => {
  const keys = await world.raw((database) => database.getAllKeys('kept'));
  const prefix = 'log.checkpoint ';
  return keys.filter((key) => key.startsWith(prefix)).map((key) => key.slice(prefix.length));
};

const forgetParked = (world: World) =>
  world.raw(async (database) => {
    for (const student of await parkedOf(world)) {
      await database.delete('kept', `log.checkpoint ${student}`);
    }
  });

export const aboutStudio: Promises = {
  'all students at a glance: what is told of each is what its log says': async (world) => {
    const store = await three(world);
    await agrees(world, store);
    world.at += DAY;
    await world.settled(store);
    await agrees(world, store);
    same(await overlook(store, idsOf(store).slice(1, 2)), (await overlook(store)).slice(1, 2));
    same(await overlook(store, []), []);
  },

  'what has been read once is read from its end the next time, until something lies before': async (
    world,
  ) => {
    const store = await three(world);
    const [ada, ben, cleo] = idsOf(store) as [StudentId, StudentId, StudentId];
    await forgetParked(world);
    const before = await overlook(store);
    same((await parkedOf(world)).toSorted(), [ada, ben].toSorted());
    holds(!(await parkedOf(world)).includes(cleo), 'that of the one who is shown is not parked');
    // What is not there any more can only come from the checkpoints.
    const records = await world.records();
    const ofAda = records.filter(({ student }) => student === ada);
    await world.raw((database) => database.delete('events', ofAda[2]!.sequence));
    same(await overlook(store), before);
    await world.raw((database) => database.add('events', ofAda[2]!));
    await store.students.rename(ada, 'Adele');
    await agrees(world, store);
    await store.students.show(ada);
    await store.current.value.record([{ kind: 'void', events: [ofAda[3]!.id] }]);
    await store.students.show(cleo);
    await agrees(world, store);
  },

  'a student whose record was read so is shown as it is': async (world) => {
    const store = await three(world);
    await forgetParked(world);
    await overlook(store);
    for (const student of idsOf(store)) {
      await store.students.show(student);
      await world.agrees(store, student);
      await store.current.value.record([run()]);
      await world.agrees(store, student);
    }
    await agrees(world, store);
  },

  'a record that was taken in is told of, and what slips in later too': async (world) => {
    const store = await three(world);
    const other = new World();
    other.at = world.at - 9 * DAY;
    const theirs = await other.ready();
    await theirs.record([programme(), { kind: 'name', name: 'Dora' }, ...runs(6)]);
    const first = await other.backup();
    other.at += DAY;
    await theirs.record(runs(5));
    const second = await other.backup();
    for (const file of [second, first]) {
      await store.restore(await store.previewBackup(file));
      await agrees(world, store);
      same(idsOf(store).length, 4);
    }
    await other.end();
  },

  'a removed student leaves nothing, and is not told of': async (world) => {
    const store = await three(world);
    const [ada, ben] = idsOf(store);
    await store.restore(await store.previewBackup(await world.backup()));
    await overlook(store);
    await store.students.remove(ben!);
    await agrees(world, store);
    holds(!(await parkedOf(world)).includes(ben!), 'no checkpoint');
    const takenIn = await world.raw((database) => database.get('kept', 'log.taken-in'));
    same(Object.keys(takenIn as object).includes(ben!), false);
    same(Object.keys(takenIn as object).includes(ada!), true);
  },

  'what waits: the last file of a student who practises elsewhere': async (world) => {
    const other = new World();
    other.at = world.at - 20 * DAY;
    const theirs = await other.ready();
    await theirs.record([programme(), ...runs(3)]);
    const made = other.at;
    const file = await other.backup();
    const store = await three(world);
    same(
      (await overlook(store)).map(({ cameAt }) => cameAt),
      [null, null, null],
    );
    await store.restore(await store.previewBackup(file));
    const dora = idsOf(store).at(-1)!;
    const cameAt = async () => (await overlook(store, [dora]))[0]!.cameAt;
    same(await cameAt(), made);
    // What the teacher rates in the lesson is no practice at home.
    await store.students.show(dora);
    await store.current.value.record([run({ judge: 'teacher' })]);
    same(await cameAt(), made);
    other.at += 5 * DAY;
    await theirs.record(runs(1));
    const next = await other.backup();
    await store.restore(await store.previewBackup(next));
    same(await cameAt(), made + 5 * DAY);
    await store.restore(await store.previewBackup(file));
    same(await cameAt(), made + 5 * DAY);
    await store.current.value.record([run()]);
    same(await cameAt(), null);
    await other.end();
  },

  'what waits: a hand-over that lacks something': async (world) => {
    const store = await three(world);
    const [ada] = idsOf(store);
    const { mark } = await store.students.fileOf(ada!, null);
    const givenOn = async () => (await overlook(store, [ada!]))[0]!.givenOn;
    same(await givenOn(), null);
    await store.students.noteHandOver(ada!, 'teacher', mark!);
    same(await givenOn(), null);
    const day = store.today.value;
    world.at += 3 * DAY;
    await world.settled(store);
    await store.students.show(ada!);
    await store.current.value.record([run()]);
    same(await givenOn(), day);
  },

  'a reading that is no longer wanted ends': async (world) => {
    const store = await three(world);
    const told: Overview[] = [];
    const over = new AbortController();
    await store.students.overlook({
      students: idsOf(store),
      today: store.today.value,
      tell: (one) => {
        told.push(one);
        over.abort();
      },
      over: over.signal,
    });
    same(told.length, 1);
    await agrees(world, store);
  },
};
