import { describe, expect, it } from 'vitest';
import type { LogDatabase } from '../../src/store/schema';
import type { Store } from '../../src/store/store';
import type { ReadTransaction } from '../../src/store/transaction';

/** Checked by the compiler only: each line under a @ts-expect-error is one that must not compile. */
async function wrongUses(database: LogDatabase, transaction: ReadTransaction, store: Store) {
  // @ts-expect-error -- there is no such store
  await database.getAll('runs');
  // @ts-expect-error -- events are kept under their sequence, a number
  await database.get('events', 'd.major-6.right.2');
  // @ts-expect-error -- small records are kept under text
  await database.get('kept', 1);
  // @ts-expect-error -- there is no such index
  await database.getAllFromIndex('events', 'day');
  // @ts-expect-error -- the index is by student, item and id
  await database.getAllFromIndex('events', 'runs', ['student', 'no item', 'id']);
  // @ts-expect-error -- a record has a sequence
  await database.add('events', { id: '', student: '', event: null });
  // @ts-expect-error -- a reading transaction does not write
  await transaction.objectStore('kept').put(1, 'key');
  // @ts-expect-error -- a kept value is unknown until it has been checked
  void (await store.kept('draft')).rows;
  // @ts-expect-error -- no such kind of event
  await store.record([{ kind: 'dance' }]);
  // @ts-expect-error -- the store gives ids itself
  await store.record([{ kind: 'name', name: 'Ada', id: 'x' }]);
  // @ts-expect-error -- the state is only read
  store.student.value = null;
  // @ts-expect-error -- and its parts too
  store.student.value.name = 'Ada';
}

describe('the schema', () => {
  it('refuses wrong use when it is compiled', () => {
    expect(wrongUses).toBeTypeOf('function');
  });
});
