import { describe, expect, it } from 'vitest';
import { displayName, spokenName, startingNoteName } from '../../shared/music/names';
import { markOf, playableTempo, tempoOf } from '../../shared/music/tempo';
import { midiOf, semitonesOf, TheoryError, transpose } from '../../shared/music/theory';

describe('note names', () => {
  it.each([
    ['B', 'B', 'H', 'Si'],
    ['Bb', 'B♭', 'B', 'Si♭'],
    ['Bbb', 'B♭♭', 'Heses', 'Si♭♭'],
    ['B#', 'B♯', 'His', 'Si♯'],
    ['Eb4', 'E♭', 'Es', 'Mi♭'],
    ['Ebb', 'E♭♭', 'Eses', 'Mi♭♭'],
    ['Ab', 'A♭', 'As', 'La♭'],
    ['Cb', 'C♭', 'Ces', 'Do♭'],
    ['F##', 'F𝄪', 'Fisis', 'Fa𝄪'],
    ['G', 'G', 'G', 'Sol'],
  ])('writes %s as %s, %s and %s', (name, letters, german, syllables) => {
    expect(displayName(name)).toBe(letters);
    expect(displayName(name, 'german')).toBe(german);
    expect(displayName(name, 'syllables')).toBe(syllables);
  });

  it('can be read aloud', () => {
    expect(spokenName('Bb4')).toBe('B flat');
    expect(spokenName('F#', 'syllables')).toBe('Fa sharp');
  });

  it('gives a black starting note both names', () => {
    expect(startingNoteName('gb')).toBe('F♯/G♭');
    expect(startingNoteName('bb', 'german')).toBe('Ais/B');
    expect(startingNoteName('b', 'german')).toBe('H');
  });
});

describe('tempo', () => {
  it('is kept in notes a minute and shown as a mark', () => {
    expect(markOf(240, 4)).toBe(60);
    expect(markOf(240, 3)).toBe(80);
    expect(tempoOf(66, 4)).toBe(264);
  });

  it('is rounded to a whole mark within what can be played', () => {
    expect(playableTempo(241, 4)).toBe(240);
    expect(playableTempo(1, 3)).toBe(42);
    expect(playableTempo(9999, 4)).toBe(600);
  });
});

describe('the doorway to tonal', () => {
  it('turns empty results into typed failures', () => {
    expect(() => transpose('H4', '3M')).toThrow(TheoryError);
    expect(() => transpose('C4', '3X')).toThrow(TheoryError);
    expect(() => midiOf('C')).toThrow('no octave: "C"');
    expect(() => midiOf('')).toThrow('unknown note: ""');
    expect(() => semitonesOf('x')).toThrow('unknown interval: "x"');
  });
});
