import './page';
import { describe, expect, it } from 'vitest';
import { contract } from './contract';
import { World } from './world';

describe('the store, on fake-indexeddb', () => {
  it.each(Object.entries(contract))('%s', async (_, promise) => {
    const world = new World();
    await expect(promise(world)).resolves.toBeUndefined();
    await world.end();
  });
});
