import { expect, test } from 'vitest';
import { hrefOf, parseRoute, SCREENS } from '../../src/route';

test('an address names a screen, with what follows it', () => {
  expect(parseRoute('#/map')).toEqual({ screen: 'map', argument: null });
  expect(parseRoute('#/item/eb.major-6.right.2')).toEqual({
    screen: 'item',
    argument: 'eb.major-6.right.2',
  });
});

test('an address that names nothing shows today’s list', () => {
  for (const hash of ['', '#', '#/', '#/nonsense', '#/__proto__']) {
    expect(parseRoute(hash)).toEqual({ screen: 'today', argument: null });
  }
  expect(parseRoute('#/map/%E0%A4%A').argument).toBeNull();
});

test('links lead back to what they were made from', () => {
  for (const screen of SCREENS) {
    expect(parseRoute(hrefOf(screen))).toEqual({ screen, argument: null });
    expect(parseRoute(hrefOf(screen, 'a/b %'))).toEqual({ screen, argument: 'a/b %' });
  }
});
