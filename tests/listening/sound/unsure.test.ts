import { expect, test } from 'vitest';
import { expectedOf } from '../../../shared/listening/expected';
import { findingsOf } from '../../../shared/listening/findings';
import { judge } from '../../../shared/listening/judge';
import { hear } from '../../../shared/listening/sound/hear';
import type { HeardNote, Take } from '../../../shared/listening/take';
import { itemOf } from '../../../shared/music/deck';
import { scoreOf } from '../../../shared/music/score-of';
import { OPTIONS } from '../../formats/scores';
import { perform, seededRandom } from '../performer';

const expected = expectedOf(scoreOf([itemOf('c.major-53.right.2')], { ...OPTIONS, pedal: false }));
const played = perform(expected, { random: seededRandom(1), tempo: 240, spread: 0.004 });

const heardAs = (change: (note: Take['notes'][number], step: number) => Take['notes'][number]) =>
  judge(expected, { ...played, source: 'microphone', notes: played.notes.map(change) })[0]!;

test('a note that is not sure counts neither as right nor as wrong, and its time says nothing', () => {
  const heard = heardAs((note, step) =>
    step === 5 ? { ...note, midi: note.midi + 1, on: note.on + 0.1, confidence: 0.3 } : note,
  );
  expect(heard).toMatchObject({ notes: 12, right: 12, faults: [] });
  expect(heard.hands.right!.waits[5]).toBeNull();
  expect(heard.certainty).toBeLessThan(1);
  const sure = heardAs((note, step) => (step === 5 ? { ...note, midi: note.midi + 1 } : note));
  expect(sure).toMatchObject({ notes: 13, right: 12, faults: [{ kind: 'wrong', step: 5 }] });
});

test('of the unevenness that a microphone finds, what hearing adds is taken away', () => {
  const midi = judge(expected, played)[0]!.hands.right!.unevenness!;
  const microphone = heardAs((note) => note).hands.right!.unevenness!;
  expect(microphone).toBeCloseTo(Math.sqrt(midi ** 2 - 3 ** 2), 1);
});

test.each([
  ['silence', 0],
  ['noise', 0.1],
])('%s is no run', (_, size) => {
  const random = seededRandom(2);
  const samples = Float32Array.from({ length: 4 * 44_100 }, () => size * (random() - 0.5));
  const options = { tempo: 240, tuning: null, isFiltered: false };
  const { isFollowed } = hear({ samples, rate: 44_100 }, expected, options);
  expect(isFollowed).toBe(false);
});

test('a sound too short for a single spectrum is no run', () => {
  const sound = { samples: new Float32Array(100), rate: 44_100 };
  const { take, isFollowed } = hear(sound, expected, { tempo: 240, tuning: 0, isFiltered: false });
  expect([take.notes, isFollowed]).toEqual([[], false]);
});

test('of two hands that have one time for both, no hand alone is called late or uneven', () => {
  const together = scoreOf([itemOf('c.major-53.together.2')], { ...OPTIONS, pedal: false });
  const both = expectedOf(together);
  const { notes } = perform(both, {
    random: seededRandom(3),
    tempo: 240,
    spread: 0,
    planted: { waits: [{ step: 5, seconds: 0.2 }], thumbLate: { left: 0.06 } },
  });
  // The upper note at the wait is not sure.
  const upper = both.steps[5]!.find(({ hand }) => hand === 'right')!.key.midi;
  const heard = notes.map((note, i): HeardNote => {
    const isUnsure = Math.floor(i / 2) === 5 && note.midi === upper;
    return { ...note, on: notes[i - (i % 2)]!.on, confidence: isUnsure ? 0.3 : 1 };
  });
  const take: Take = { source: 'microphone', notes: heard, pedal: null, hasTimeOfEachHand: false };
  const measured = judge(both, take)[0]!;
  const { right, left } = measured.hands;
  expect([right!.thumbLate, left!.thumbLate]).toEqual([null, null]);
  expect(right!.unevenness).toBe(left!.unevenness);
  const found = findingsOf(measured, together).filter(({ kind }) => kind === 'hesitation');
  expect(found).toHaveLength(1);
  expect(found[0]).toMatchObject({ hand: 'both', step: 5 });
});
