import { expect, test } from 'vitest';
import { readPreferences } from '../../src/preferences';

test('without anything kept the defaults hold', () => {
  const defaults = readPreferences(undefined);
  expect(defaults).toMatchObject({ nameStyle: 'letters', theme: 'system', beat: 'heard' });
  expect(readPreferences('damaged')).toEqual(defaults);
});

test('a damaged field falls back alone', () => {
  const kept = { nameStyle: 'german', theme: 'purple', volume: 7, blackNames: { db: 'sharp' } };
  const read = readPreferences(kept);
  expect(read.nameStyle).toBe('german');
  expect(read.blackNames).toEqual({ db: 'sharp' });
  expect(read.theme).toBe('system');
  expect(read.volume).toBe(readPreferences({}).volume);
});

test('what is kept is read back as it was, and nothing else comes in', () => {
  const chosen = {
    ...readPreferences({}),
    nameStyle: 'syllables',
    theme: 'dark',
    keySignature: 'own',
    latencyOffsetMs: -120,
    forwardKeys: ['F9'],
  } as const;
  expect(readPreferences({ ...chosen, other: 1 })).toEqual(chosen);
});
