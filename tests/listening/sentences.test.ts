/** What a person is told, word for word, of takes with one planted fault. */
import { expect, it } from 'vitest';
import { expectedOf } from '../../shared/listening/expected';
import { judge } from '../../shared/listening/judge';
import { sentencesOf } from '../../shared/listening/sentences';
import { type ItemId, itemOf } from '../../shared/music/deck';
import { scoreOf } from '../../shared/music/score-of';
import { OPTIONS } from '../formats/scores';
import { perform, type Planted, seededRandom } from './performer';

function told(id: ItemId, planted: Planted): readonly string[] {
  const score = scoreOf([itemOf(id)], { ...OPTIONS, pedal: false });
  const expected = expectedOf(score);
  const take = perform(expected, { random: seededRandom(5), tempo: 240, spread: 0.004, planted });
  const [measured] = judge(expected, take);
  return sentencesOf(measured!, score, 'letters');
}

// The left hand's F major: F5 A4 C2 F1 A4 C2 F1 up and back down.
const LEFT = 'f.major-53.left.2';
const BOTH = 'c.major-53.together.2';

it.each<[ItemId, Planted, readonly string[]]>([
  [LEFT, {}, []],
  [
    LEFT,
    { waits: [{ step: 9, seconds: 0.14 }] },
    ['Going down: it waits 0.14 s before the thumb on F.'],
  ],
  [
    LEFT,
    { waits: [{ step: 4, seconds: 1.5 }] },
    ['Going up: it stops for 1.5 s before the hand goes over to A.'],
  ],
  [LEFT, { wrong: [{ step: 3, hand: 'left', by: -1 }] }, ['Going up: E for F.']],
  [
    LEFT,
    {
      wrong: [
        { step: 2, hand: 'left', by: 1 },
        { step: 5, hand: 'left', by: 1 },
      ],
      missed: [{ step: 9, hand: 'left' }],
    },
    ['Going up: C♯ for C, and 1 more wrong note.', 'Going down: F is missing.'],
  ],
  [LEFT, { extra: [{ step: 3, midi: 56 }] }, ['Going up: A♭ is one note too many, before A.']],
  [LEFT, { until: 5 }, ['Going up: it breaks off at C and does not go on.']],
  [
    LEFT,
    { restarts: [{ at: 6, from: 0, pause: 1 }] },
    ['Going up: it breaks off at F and begins again.'],
  ],
  [LEFT, { thumbLate: { left: 0.04 } }, ['The thumb comes 0.04 s too late, time and again.']],
  [
    BOTH,
    { waits: [{ step: 9, seconds: 0.14 }] },
    ['Both hands, going down: it waits 0.14 s before C, where the left thumb goes under.'],
  ],
  [BOTH, { leftLate: 0.04 }, ['The left hand comes 0.04 s after the right.']],
  [
    BOTH,
    { thumbAccent: { right: 24 } },
    ['Right hand: the thumb is louder than the other fingers.'],
  ],
  [BOTH, { missed: [{ step: 3, hand: 'right' }] }, ['Right hand, going up: C is missing.']],
])('%s with %o', (id, planted, sentences) => {
  expect(told(id, planted)).toEqual(sentences);
});

it('tells three things at most, the gravest first', () => {
  const sentences = told(BOTH, {
    waits: [
      { step: 4, seconds: 2 },
      { step: 9, seconds: 0.2 },
    ],
    wrong: [{ step: 2, hand: 'right', by: 1 }],
    leftLate: 0.05,
    thumbAccent: { right: 30 },
  });
  expect(sentences).toHaveLength(3);
  expect(sentences[0]).toContain('it stops for 2.0');
  expect(sentences[1]).toContain('for G');
  expect(sentences[2]).toContain('it waits 0.');
});

it('names notes in the style of the person', () => {
  const score = scoreOf([itemOf('bb.major-53.right.2')], { ...OPTIONS, pedal: false });
  const expected = expectedOf(score);
  const planted: Planted = { missed: [{ step: 6, hand: 'right' }] };
  const take = perform(expected, { random: seededRandom(1), tempo: 240, spread: 0.003, planted });
  const [measured] = judge(expected, take);
  expect(sentencesOf(measured!, score, 'german')).toEqual(['Going up: B is missing.']);
});
