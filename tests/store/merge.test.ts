import './page';
import { describe, expect, it } from 'vitest';
import { eventLines, headerLine } from '../../shared/formats/backup';
import { decodeKept, type KeptEvent } from '../../shared/formats/kept';
import type { LogEvent, StudentId } from '../../shared/log/events';
import { replay } from '../../shared/planning/student';
import type { Device, Mark } from '../../src/store/store';
import { SAMPLES } from '../formats/samples';
import { seededNumbers, spoiltBytes } from '../formats/spoil';
import { fc } from '../learning/property';
import { failingAfter, replacing } from './contract-trouble';
import { log } from './histories';
import { programme, runs, World } from './world';

const STUDENTS: readonly StudentId[] = [
  '22222222-2222-4222-8222-222222222222',
  '33333333-3333-4333-8333-333333333333',
];

const fileOf = (kept: readonly KeptEvent[]): File =>
  new File([headerLine(0, kept.length), eventLines(kept)], 'log.arpeggiary');

const keptOf = (event: LogEvent): KeptEvent => ({ id: event.id, student: event.student, event });

/** The same in a log that something has spoilt. */
const damagedOf = ({ id, student, event }: KeptEvent): KeptEvent => ({
  id,
  student,
  event: { ...(event as LogEvent), version: null },
});

/** What a later version of the app may have written. */
const newerOf = (event: LogEvent): LogEvent =>
  ({ ...event, version: 2, kind: 'dance', steps: [1, { to: 2 }] }) as unknown as LogEvent;

/** What a device shows of each of its students, once it shows it. */
async function statesOf(store: Device) {
  const states = new Map<StudentId, unknown>();
  for (const { id } of store.students.listed.value) {
    await store.students.show(id);
    states.set(id, { student: store.student.value, unread: store.unread.value });
  }
  return states;
}

/** Takes files in, one after the other, on a device of its own. */
async function stateAfter(files: readonly (readonly KeptEvent[])[]) {
  const world = new World();
  const store = await world.ready();
  for (const file of files) await store.restore(await store.previewBackup(fileOf(file)));
  const states = await statesOf(store);
  const ids = (await world.records()).map(({ id }) => id);
  await world.end();
  return { states, ids };
}

/**
 * A log of two students and, for each event, whether a later version wrote it, the files that it is in, at least one, and
 * those in which it would be damaged.
 */
const scattered = log.chain((events) => {
  const each = { minLength: events.length, maxLength: events.length };
  return fc.record({
    events: fc.constant(events),
    students: fc.array(fc.nat(1), each),
    areNewer: fc.array(
      fc.nat(9).map((chance) => chance === 0),
      each,
    ),
    damagedIn: fc.array(fc.oneof(fc.constant<number[]>([]), fc.subarray([0, 1, 2, 3])), each),
    homes: fc.array(fc.subarray([0, 1, 2, 3], { minLength: 1 }), each),
    order: fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 }),
    again: fc.array(fc.nat(3), { maxLength: 3 }),
  });
});

describe('taking files in', () => {
  it('in any split, any order and more than once comes to what the whole log says', async () => {
    await fc.assert(
      fc.asyncProperty(scattered, async (one) => {
        const { events, students, areNewer, homes, damagedIn, order, again } = one;
        // A correction is of the student whose event it voids, as the app records it.
        const own = new Map<string, StudentId>();
        const all = events.map((event, i): LogEvent => {
          const voided = event.kind === 'void' ? own.get(event.events[0]!) : undefined;
          const student = voided ?? STUDENTS[students[i]!]!;
          own.set(event.id, student);
          return areNewer[i] ? newerOf({ ...event, student }) : { ...event, student };
        });
        const copyIn = (i: number, file: number): KeptEvent => {
          const whole = keptOf(all[i]!);
          return damagedIn[i]!.includes(file) ? damagedOf(whole) : whole;
        };
        const files = [0, 1, 2, 3].map((file) =>
          [...all.keys()].flatMap((i) => (homes[i]!.includes(file) ? [copyIn(i, file)] : [])),
        );
        const { states, ids } = await stateAfter([...order, ...again].map((file) => files[file]!));
        expect(ids.toSorted()).toEqual(all.map(({ id }) => id).toSorted());
        for (const id of new Set(all.map((event) => event.student))) {
          // Of each event the one whole copy that is in any file.
          const best = [...all.keys()]
            .filter((i) => all[i]!.student === id)
            .map((i) =>
              copyIn(i, homes[i]!.find((file) => !damagedIn[i]!.includes(file)) ?? homes[i]![0]!),
            )
            .map((kept) => ({ id: kept.id, ...decodeKept(kept) }));
          expect(states.get(id)).toEqual({
            student: replay(best.flatMap((read) => (read.outcome === 'ok' ? [read.event] : []))),
            unread: best.filter(({ outcome }) => outcome !== 'ok'),
          });
        }
      }),
      { numRuns: 25 },
    );
  });

  it('two devices that go on and hand over what is new, in any order, come to the same', async () => {
    const step = fc.record({
      who: fc.nat(1),
      does: fc.constantFrom('record', 'undo', 'hand over', 'hand over', 'hand over all'),
      wait: fc.constantFrom(0, 20_000, 3_600_000, 86_400_000),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 6, maxLength: 14 }), async (steps) => {
        const worlds = [new World(), new World()] as const;
        const stores = [await worlds[0].ready(), await worlds[1].ready()] as const;
        await stores[0].record([programme(), ...runs(2)]);
        const student = stores[0].students.shown.value!;
        const marks: (Mark | null)[] = [null, null];
        const handOver = async (from: number, since: Mark | null) => {
          const { file, mark } = await stores[from]!.students.fileOf(student, since);
          marks[from] = mark ?? marks[from]!;
          const preview = await stores[1 - from]!.previewBackup(new File([file], 'x'));
          expect(preview.hasGap).toBe(false);
          await stores[1 - from]!.restore(preview);
        };
        await handOver(0, null);
        for (const { who, does, wait } of steps) {
          for (const world of worlds) world.at += wait;
          if (does === 'record') await stores[who]!.record(runs(2));
          else if (does === 'hand over') await handOver(who, marks[who]!);
          else if (does === 'hand over all') await handOver(who, null);
          else {
            const events = await worlds[who]!.events();
            await stores[who]!.record([{ kind: 'void', events: [events.at(-1)!.id] }]);
          }
        }
        await handOver(0, marks[0]!);
        await handOver(1, marks[1]!);
        for (const [i, world] of worlds.entries()) {
          await world.settled(stores[i]!);
          await world.agrees(stores[i]!);
        }
        expect(stores[1].student.value).toEqual(stores[0].student.value);
        for (const world of worlds) await world.end();
      }),
      { numRuns: 12 },
    );
  });

  it('a failure in the middle: nothing of it stays, of the log or of who is here', async () => {
    const [world, other] = [new World(), new World()];
    await (await other.ready()).record([programme(), ...runs(300)]);
    const store = await world.ready();
    await store.record([programme(), ...runs(2)]);
    const contents = () =>
      world.raw((database) => Promise.all([database.getAll('events'), database.getAll('kept')]));
    const before = await contents();
    const preview = await store.previewBackup(await other.backup());
    for (const fitting of [0, 1, 270, 300]) {
      const full = failingAfter(fitting, 'QuotaExceededError');
      await replacing(IDBObjectStore.prototype, 'add', full, async () => {
        await expect(store.restore(preview)).rejects.toMatchObject({ kind: 'full' });
      });
      expect(await contents()).toEqual(before);
      await world.agrees(store);
    }
    await store.restore(preview);
    expect(store.students.listed.value).toHaveLength(2);
    expect(await world.records()).toHaveLength(3 + 301);
    for (const one of [world, other]) await one.end();
  });

  it('10,000 spoilt files: shown or refused by the format, and nothing is changed by either', async () => {
    const world = new World();
    const store = await world.ready();
    await store.record([{ kind: 'name', name: 'Ada' }]);
    const contents = () =>
      world.raw((database) => Promise.all([database.getAll('events'), database.getAll('kept')]));
    const before = await contents();
    const known = (await world.events())[0]!.id;
    // The file of a device, that of a student with what is new, and one that follows a file that is not here.
    const kept = Object.values<LogEvent>(SAMPLES).map((event) => {
      return { id: event.id, student: event.student, event };
    });
    const texts = [null, known, SAMPLES.run.id].map(
      (after) => headerLine(0, kept.length, after) + eventLines(kept),
    );
    const numbers = seededNumbers(20_261_128);
    const other = new World();
    const taking = await other.ready();
    const outcomes = new Set<string>();
    for (let i = 0; i < 10_000; i++) {
      const spoilt = spoiltBytes(texts[i % texts.length]!, numbers);
      const file = new File([spoilt], 'x.arpeggiary');
      const outcome = await store.previewBackup(file).then(
        () => 'shown',
        (error: unknown) =>
          (error as Error).name === 'BackupError'
            ? 'refused'
            : `${String(error)}: ${Buffer.from(spoilt).toString('latin1')}`,
      );
      outcomes.add(outcome);
      // What is shown can be taken in.
      if (outcome === 'shown') await taking.restore(await taking.previewBackup(file));
    }
    expect(outcomes).toEqual(new Set(['shown', 'refused']));
    expect(await contents()).toEqual(before);
    expect({}).not.toHaveProperty('polluted');
    for (const { id } of taking.students.listed.value) {
      await taking.students.show(id);
      expect(taking.student.value).toEqual(await other.rebuilt(id));
    }
    for (const one of [world, other]) await one.end();
  });
});
