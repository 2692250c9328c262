import { describe, expect, it } from 'vitest';
import { CHORDS, type ChordId } from '../../shared/music/chords';
import type { StartingNote } from '../../shared/music/deck';
import type { OwnProblem } from '../../shared/music/fingering/own';
import { reasonsOf } from '../../shared/music/fingering/reasons';
import { fingeringsOf } from '../../shared/music/fingering/result';
import type { Hand, Question } from '../../shared/music/fingering/types';
import {
  changeText,
  comparisonText,
  listOf,
  problemText,
} from '../../shared/music/fingering/words';
import { deckQuestions, keysOf } from './questions';

const NAMES = ['C', 'D♭', 'D', 'E♭', 'E', 'F', 'F♯', 'G', 'A♭', 'A', 'B♭', 'B'];
const nameOf = (key: number): string => NAMES[key % 12]!;

const questionOf = (note: StartingNote, chord: ChordId, hand: Hand, span = 13): Question => ({
  keys: keysOf(note, chord),
  hand,
  octaves: 2,
  span,
});

function reasons(note: StartingNote, chord: ChordId, hand: Hand, choice = 0, span = 13) {
  const question = questionOf(note, chord, hand, span);
  const { best, alternatives } = fingeringsOf(question);
  return reasonsOf(question, [best, ...alternatives][choice]!, nameOf);
}

describe('the reasons for a fingering', () => {
  it('C major, right hand', () => {
    expect(reasons('c', 'major-53', 'right')).toEqual([
      'Thumb on C in every octave.',
      '3 on G: the next thumb is a fourth away.',
      'Turn with 5 on C: it saves passing the thumb for one note.',
    ]);
  });

  it('C major, left hand', () => {
    expect(reasons('c', 'major-53', 'left')).toEqual([
      'Thumb on C in every octave.',
      '4 on E: the next thumb is a major third away.',
      'Begin with 5 on C: it saves passing the thumb for one note.',
    ]);
  });

  it('D flat major', () => {
    expect(reasons('db', 'major-53', 'right')).toEqual([
      'Thumb on F, the first white key on the way up.',
      '4 on D♭: the next thumb is a major third away.',
      'Begin with 2 on D♭ (inside the run 4).',
    ]);
  });

  it('D major, left hand: the black key decides', () => {
    expect(reasons('d', 'major-53', 'left')).toContain(
      '3 on F♯: a black key suits the longest finger, though the next thumb is a major third away.',
    );
  });

  it('F sharp major: black keys alone', () => {
    expect(reasons('gb', 'major-53', 'right')[0]).toBe(
      'Only black keys, so they are fingered like white ones: thumb on F♯.',
    );
  });

  it('a diminished seventh from E flat: two notes at the start', () => {
    expect(reasons('eb', 'diminished-7', 'right')).toEqual([
      'Thumb on A, the first white key on the way up.',
      'Away from the thumb, 2 3 4 follow in order.',
      'Begin with 2 3 on E♭ F♯ (inside the run 3 4).',
    ]);
  });

  it('a wide stretch for a small hand is named once', () => {
    const wide = reasons('c', 'dominant-43', 'right', 0, 9).filter((text) =>
      text.startsWith('Wide'),
    );
    expect(wide).toContain('Wide for this hand: 3 and 4 on F and A, a major third.');
    expect(new Set(wide).size).toBe(wide.length);
  });

  it('an alternative says what it does otherwise', () => {
    expect(reasons('c', 'major-53', 'right', 1)).toContain(
      '4 on G, though the next thumb is a fourth away.',
    );
    expect(reasons('c', 'dominant-7', 'right', 2)).toContain(
      'Thumb on C and G: small positions, but more changes.',
    );
  });

  it('there are some for every choice in the deck, without a gap', () => {
    for (const question of deckQuestions(10)) {
      const { best, alternatives } = fingeringsOf(question);
      for (const choice of [best, ...alternatives]) {
        const texts = reasonsOf(question, choice, nameOf);
        expect(texts.length).toBeGreaterThanOrEqual(1);
        for (const text of texts) expect(text).toMatch(/^[A-Z0-9][^\n]*[.]$/);
        expect(texts.join()).not.toMatch(/undefined|NaN|null/);
      }
    }
    expect(CHORDS).toHaveLength(11);
  });
});

describe('other words', () => {
  it('a position change', () => {
    const { changes } = fingeringsOf(questionOf('c', 'major-53', 'right')).best;
    expect(changes.map((change) => changeText(change, nameOf))).toEqual([
      'Thumb under from 3 on G to C, a fourth, white to white: hard.',
      'Hand over from the thumb on C to 3 on G, a fourth, white to white: hard.',
    ]);
  });

  it('two fingerings compared', () => {
    const { best, alternatives } = fingeringsOf(questionOf('c', 'major-53', 'left'));
    expect(comparisonText(best, best)).toBe('As easy for the hand.');
    const text = comparisonText(alternatives[0]!, best);
    expect(text).toMatch(/^(Asks|Spares) .*\.$/);
    expect(text).not.toBe(comparisonText(best, alternatives[0]!));
  });

  it('a list', () => {
    expect([[], ['C'], ['C', 'E'], ['C', 'E', 'G']].map(listOf)).toEqual([
      '',
      'C',
      'C and E',
      'C, E and G',
    ]);
  });

  it.each<[OwnProblem, string]>([
    [
      { kind: 'digits', found: '' },
      'Type the fingers from the lowest note up, 1 for the thumb to 5.',
    ],
    [{ kind: 'digits', found: '7' }, 'Fingers are the digits 1 to 5; "7" is none.'],
    [
      { kind: 'count', found: 5, wanted: [4, 7] },
      '5 fingers: 4 are needed for one octave with its top note, 7 for two.',
    ],
    [
      { kind: 'unclear', wanted: 9 },
      'One octave does not show how this goes on: type two octaves, 9 fingers.',
    ],
    [{ kind: 'irregular' }, 'This can be played once, but not repeated from octave to octave.'],
    [
      { kind: 'repeated', index: 1, from: 2, to: 2 },
      'E and G both have 2: one finger cannot join two keys.',
    ],
    [
      { kind: 'crossing', index: 1, from: 3, to: 2 },
      'From E with 3 to G with 2, two fingers would cross: only the thumb passes under the others, or they over the thumb.',
    ],
  ])('%j', (problem, text) => {
    const keys = keysOf('c', 'major-53');
    expect(problemText(problem, (index) => keys[index]!, nameOf)).toBe(text);
  });

  it('never call a fingering wrong', () => {
    const problems: readonly OwnProblem[] = [
      { kind: 'irregular' },
      { kind: 'crossing', index: 0, from: 3, to: 2 },
    ];
    for (const problem of problems)
      expect(problemText(problem, () => 60, nameOf)).not.toMatch(/wrong|error|mistake|invalid/i);
  });
});
