import { describe, expect, it } from 'vitest';
import { CHORD_IDS } from '../../shared/music/chords';
import { BLACK_NOTES, STARTING_NOTES } from '../../shared/music/deck';
import { spell } from '../../shared/music/spelling';

describe('spelling', () => {
  it('goes by letter steps, never by the sound alone', () => {
    expect(spell('d', 'major-6')).toEqual(['D', 'F', 'Bb']);
  });

  it('needs no double accidental from a black key', () => {
    for (const note of BLACK_NOTES) {
      for (const chord of CHORD_IDS) {
        expect(spell(note, chord).filter((name) => /bb|##/.test(name))).toEqual([]);
      }
    }
  });

  it('takes the name that the person has fixed', () => {
    expect(spell('eb', 'minor-53')).toEqual(['Eb', 'Gb', 'Bb']);
    expect(spell('eb', 'minor-53', { eb: 'sharp' })).toEqual(['D#', 'F#', 'A#']);
    expect(spell('eb', 'minor-53', { gb: 'sharp' })).toEqual(['Eb', 'Gb', 'Bb']);
  });

  it('has as many notes as the chord, from the bottom note up', () => {
    for (const note of STARTING_NOTES) {
      for (const chord of CHORD_IDS) {
        expect(spell(note, chord)).toHaveLength(chord.startsWith('d') ? 4 : 3);
      }
    }
  });
});
