import { expect, test } from 'vitest';
import { openDemo } from '../../src/demo/open-demo';

const names = async () => (await indexedDB.databases()).map(({ name }) => name);

test('the demonstration has a database of its own, which is gone when one leaves', async () => {
  const store = await openDemo();
  expect(store.status.value).toBe('ready');
  expect(store.student.value.name).toContain('(invented)');
  expect(store.student.value.eventCount).toBeGreaterThan(3000);
  expect(store.todaysRuns.value).toEqual([]);
  await store.record([{ kind: 'remark', about: null, text: 'looking round' }]);
  expect(await names()).toEqual(['arpeggiary-demo']);
  store.close();
  await expect.poll(names).toEqual([]);
}, 60_000);
