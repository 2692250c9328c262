import './page';
import { describe, expect, it } from 'vitest';
import { eventLines, headerLine } from '../../shared/formats/backup';
import type { LogEvent, StudentId } from '../../shared/log/events';
import { replay } from '../../shared/planning/student';
import { SAMPLES } from '../formats/samples';
import { seededNumbers, spoil } from '../formats/spoil';
import { fc } from '../learning/property';
import { log } from './histories';
import { World } from './world';

const STUDENTS: readonly StudentId[] = [
  '22222222-2222-4222-8222-222222222222',
  '33333333-3333-4333-8333-333333333333',
];

const fileOf = (events: readonly LogEvent[]): File => {
  const kept = events.map((event) => ({ id: event.id, student: event.student, event }));
  return new File([headerLine(0, kept.length), eventLines(kept)], 'log.arpeggiary');
};

/** Takes files in, one after the other, on a device of its own. What the device then shows of each student. */
async function stateAfter(files: readonly (readonly LogEvent[])[]) {
  const world = new World();
  const store = await world.ready();
  for (const file of files) await store.restore(await store.previewBackup(fileOf(file)));
  const states = new Map<StudentId, unknown>();
  for (const { id } of store.students.listed.value) {
    await store.students.show(id);
    states.set(id, store.student.value);
  }
  await world.end();
  return states;
}

/** A log of two students and, for each event, the files that it is in: at least one. */
const scattered = log.chain((events) =>
  fc.record({
    events: fc.constant(events),
    students: fc.array(fc.nat(1), { minLength: events.length, maxLength: events.length }),
    homes: fc.array(fc.subarray([0, 1, 2], { minLength: 1 }), {
      minLength: events.length,
      maxLength: events.length,
    }),
    order: fc.shuffledSubarray([0, 1, 2], { minLength: 3 }),
    again: fc.nat(2),
  }),
);

describe('taking files in', () => {
  it('in any split, any order and more than once comes to what the whole log says', async () => {
    await fc.assert(
      fc.asyncProperty(scattered, async ({ events, students, homes, order, again }) => {
        // A correction is of the student whose event it voids, as the app records it.
        const own = new Map<string, StudentId>();
        const all = events.map((event, i): LogEvent => {
          const voided = event.kind === 'void' ? own.get(event.events[0]!) : undefined;
          const student = voided ?? STUDENTS[students[i]!]!;
          own.set(event.id, student);
          return { ...event, student };
        });
        const files = [0, 1, 2].map((file) => all.filter((_, i) => homes[i]!.includes(file)));
        const states = await stateAfter([...order, again].map((file) => files[file]!));
        for (const student of new Set(all.map((event) => event.student))) {
          const wanted = replay(all.filter((event) => event.student === student));
          expect(states.get(student)).toEqual(wanted);
        }
      }),
      { numRuns: 15 },
    );
  });

  it('10,000 spoilt files: shown or refused by the format, and nothing is changed by either', async () => {
    const world = new World();
    const store = await world.ready();
    await store.record([{ kind: 'name', name: 'Ada' }]);
    const before = await world.raw((database) =>
      Promise.all([database.getAll('events'), database.getAll('kept')]),
    );
    const text = await fileOf([SAMPLES.run, SAMPLES.name, SAMPLES.void]).text();
    const numbers = seededNumbers(20_261_128);
    const outcomes = new Set<string>();
    for (let i = 0; i < 10_000; i++) {
      const spoilt = spoil(text, numbers);
      const outcome = await store.previewBackup(new File([spoilt], 'x.arpeggiary')).then(
        () => 'shown',
        (error: unknown) =>
          (error as Error).name === 'BackupError' ? 'refused' : `${String(error)}: ${spoilt}`,
      );
      outcomes.add(outcome);
    }
    expect(outcomes).toEqual(new Set(['shown', 'refused']));
    const after = await world.raw((database) =>
      Promise.all([database.getAll('events'), database.getAll('kept')]),
    );
    expect(after).toEqual(before);
    await world.end();
  });
});
