import './page';
import { forceCloseDatabase } from 'fake-indexeddb';
import { expect, it } from 'vitest';
import { runs, World } from './world';

it('goes on when the browser takes the connection away, as iOS does with pages in the background', async () => {
  const connections: IDBDatabase[] = [];
  const open = indexedDB.open.bind(indexedDB);
  indexedDB.open = (...args) => {
    const request = open(...args);
    request.addEventListener('success', () => connections.push(request.result));
    return request;
  };
  const world = new World();
  const store = await world.ready();
  for (let i = 0; i < 3; i++) {
    const before = store.record(runs(2));
    for (const connection of connections) forceCloseDatabase(connection as never);
    await before;
    await store.record(runs(1));
  }
  expect(await world.records()).toHaveLength(9);
  await world.agrees(store);
  await world.end();
});
