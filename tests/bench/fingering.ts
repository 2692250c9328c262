/** All 264 fingerings of the deck: time, how it grows, and how often tradition and the hand alone agree. */
import { CHORDS } from '../../shared/music/chords';
import { STARTING_NOTES } from '../../shared/music/deck';
import { costOf } from '../../shared/music/fingering/cost';
import { asRightHand, lineOf } from '../../shared/music/fingering/line';
import { fingeringsOf } from '../../shared/music/fingering/result';
import type { Question } from '../../shared/music/fingering/types';
import { pitchClassOf } from '../../shared/music/spelling';
import { semitonesOf } from '../../shared/music/theory';
import { keysOf } from '../fingering/questions';
import { PRINTED_TRIADS } from '../reference/printed-triads';

const DECK: readonly Question[] = STARTING_NOTES.flatMap((note) =>
  CHORDS.flatMap(({ intervals }) => {
    const keys = intervals.map((interval) => 48 + pitchClassOf(note) + semitonesOf(interval));
    return (['right', 'left'] as const).map((hand) => ({ keys, hand, octaves: 2 }));
  }),
);

/** The least time in ms of several goes: what the work takes when nothing else has the machine. */
function leastTime(times: number, task: () => void): number {
  let least = Infinity;
  for (let i = 0; i < times; i++) {
    const start = performance.now();
    task();
    least = Math.min(least, performance.now() - start);
  }
  return least;
}

const askAll = (questions: readonly Question[]): void => {
  for (const question of questions) fingeringsOf(question);
};

function growth(name: string, questions: readonly Question[]): void {
  const time = leastTime(9, () => askAll(questions)) / questions.length;
  console.log(`  ${name}: ${(1000 * time).toFixed(0)} µs a question`);
}

const digitsOf = ({ fingers }: { readonly fingers: readonly number[] }): string => fingers.join('');

/** How many of the printed fingerings of triads come first, and how many are offered, of all that are printed. */
function printedShares(): void {
  const answers = PRINTED_TRIADS.map(({ note, chord, hand, usual, alternate }) => {
    const { best, alternatives } = fingeringsOf({ keys: keysOf(note, chord), hand, octaves: 1 });
    const others = alternatives.map(digitsOf);
    return { isFirst: digitsOf(best) === usual, alternate, isOffered: others.includes(alternate!) };
  });
  const printed = answers.filter(({ alternate }) => alternate);
  console.log('fingerings of root-position triads as printed:');
  console.log(`  first: ${answers.filter(({ isFirst }) => isFirst).length} of ${answers.length}`);
  console.log(
    `  alternatives that are offered: ${printed.filter(({ isOffered }) => isOffered).length} of ${printed.length}`,
  );
}

export function benchFingering(): void {
  const first = leastTime(1, () => askAll(DECK));
  const warm = leastTime(15, () => askAll(DECK));
  console.log(
    `${DECK.length} fingerings, two octaves, with alternatives: ${warm.toFixed(1)} ms (at most 60 ms), ` +
      `the first time ${first.toFixed(1)} ms`,
  );

  console.log(`  ${((1000 * warm) / DECK.length).toFixed(0)} µs each`);
  printedShares();

  console.log('by octaves (all 264):');
  for (const octaves of [1, 2, 4, 8])
    growth(
      String(octaves),
      DECK.map((question) => ({ ...question, octaves })),
    );

  console.log('by notes of the chord (from all twelve keys, right hand, two octaves):');
  for (const size of [2, 3, 4, 5, 7, 12]) {
    const steps = Array.from({ length: size }, (_, i) => Math.floor((12 * i) / size));
    growth(
      String(size),
      STARTING_NOTES.map((note) => ({
        keys: steps.map((step) => 48 + pitchClassOf(note) + step),
        hand: 'right',
        octaves: 2,
      })),
    );
  }

  console.log('the best by all rules is also the lightest for the hand alone among those shown:');
  const light = DECK.filter((question) => {
    const { best, alternatives } = fingeringsOf(question);
    const handCost = ({ plan }: typeof best) =>
      costOf(lineOf(question), asRightHand(plan, question.hand)).hand;
    return alternatives.every((one) => handCost(one) >= handCost(best));
  });
  console.log(`  ${light.length} of ${DECK.length}`);
}
