/**
 * Two checks on ground for which the rules were not made. The major scales have fingerings that every method prints
 * alike (from memory, high): the thumbs must come out on the same keys. And inversions of triads as conservatory
 * methods commonly give them (from memory, high for white starts).
 */
import { describe, expect, it } from 'vitest';
import type { ChordId } from '../../shared/music/chords';
import type { StartingNote } from '../../shared/music/deck';
import { fingeringsOf } from '../../shared/music/fingering/result';
import type { Hand } from '../../shared/music/fingering/types';
import { pitchClassOf } from '../../shared/music/spelling';
import { digitsOf } from '../fingering/questions';

const MAJOR = [0, 2, 4, 5, 7, 9, 11];

/** Degrees of the scale that the thumbs take inside a run, 1 = the bottom note; right hand, left hand. */
const THUMBS: readonly (readonly [StartingNote, string, string])[] = [
  ['c', '1 4', '1 5'],
  ['g', '1 4', '1 5'],
  ['d', '1 4', '1 5'],
  ['a', '1 4', '1 5'],
  ['e', '1 4', '1 5'],
  ['b', '1 4', '1 4'],
  ['gb', '4 7', '4 7'],
  ['db', '3 7', '3 7'],
  ['ab', '3 6', '3 7'],
  ['eb', '2 6', '3 7'],
  ['bb', '2 5', '3 7'],
  ['f', '1 5', '1 5'],
];

const scale = (note: StartingNote, hand: Hand, octaves: number) =>
  fingeringsOf({ keys: MAJOR.map((step) => 48 + pitchClassOf(note) + step), hand, octaves }).best;

/** "1 4" when the thumb has the first and the fourth degree. */
const thumbsOf = (note: StartingNote, hand: Hand): string =>
  scale(note, hand, 2)
    .plan.pattern.flatMap((finger, degree) => (finger === 1 ? [degree + 1] : []))
    .join(' ');

describe('major scales', () => {
  it.each(THUMBS)('%s', (note, right, left) => {
    expect(thumbsOf(note, 'right')).toBe(right);
    expect(thumbsOf(note, 'left')).toBe(left);
  });

  it.each([
    ['c', 'right', '12312345'],
    ['c', 'left', '54321321'],
    ['bb', 'right', '21231234'],
    ['bb', 'left', '32143213'],
  ] as const)('%s, %s hand, finger by finger', (note, hand, digits) => {
    expect(scale(note, hand, 1).fingers.join('')).toBe(digits);
  });
});

describe('inversions of triads', () => {
  it.each([
    ['e', 'major-6', '1245', '5421'],
    ['g', 'major-64', '1245', '5321'],
    ['c', 'minor-6', '1245', '5421'],
    ['e', 'minor-64', '1245', '5321'],
    ['g', 'minor-64', '1235', '5321'],
    ['gb', 'major-6', '2124', '3213'],
    ['ab', 'major-64', '2412', '4212'],
    ['bb', 'minor-64', '1235', '5321'],
  ] satisfies [StartingNote, ChordId, string, string][])('%s %s', (note, chord, right, left) => {
    expect(digitsOf(note, chord, 'right', 1)).toBe(right);
    expect(digitsOf(note, chord, 'left', 1)).toBe(left);
  });
});
