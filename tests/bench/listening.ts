/**
 * How well takes are judged: `npm run bench:listening` plays seeded takes with planted faults and counts what is found and
 * what is invented, by how even the player is. MIDI: no sound is made, so the numbers are of the analysis alone. MIDI_TAKES
 * sets how many, MIDI_SEED the first seed.
 */
import { expectedOf } from '../../shared/listening/expected';
import { type Finding, findingsOf } from '../../shared/listening/findings';
import { judge } from '../../shared/listening/judge';
import { mean } from '../../shared/listening/statistics';
import { DECK, handsOf, type Item } from '../../shared/music/deck';
import type { Hand } from '../../shared/music/fingering/types';
import type { Score } from '../../shared/music/score';
import { scoreOf } from '../../shared/music/score-of';
import { OPTIONS } from '../formats/scores';
import { perform, type Planted, seededRandom } from '../listening/performer';
import { type PlayedNote, stepsWaitedFor } from './waits';

const TAKES = Number(process.env.MIDI_TAKES ?? 400);
const FIRST_SEED = Number(process.env.MIDI_SEED ?? 0);
const MARKS = [40, 60, 80, 100, 120];
/** Seconds. */
const WAITS = [0.08, 0.12, 0.15];
/** Standard deviation of one onset in ms. The first is that of professionals, 8 to 9 ms from note to note. */
const PLAYERS = { professional: 6, advanced: 10, 'in the middle': 16 };

type Kind = 'hesitation' | 'wrong' | 'missed' | 'extra';
const KINDS: readonly Kind[] = ['hesitation', 'wrong', 'missed', 'extra'];

interface Tally {
  planted: number;
  found: number;
  invented: number;
}

const scores = new Map<Item, Score>();
function scoreFor(item: Item): Score {
  const score = scores.get(item) ?? scoreOf([item], { ...OPTIONS, pedal: false });
  scores.set(item, score);
  return score;
}

const pick = <T>(values: readonly T[], random: () => number): T =>
  values[Math.floor(random() * values.length)]!;

/** One fault of each kind at most, at places of their own, each in half of the takes. */
function plant(score: Score, hands: readonly Hand[], random: () => number) {
  const count = Math.max(score.right.length, score.left.length);
  const places = [2, 5, 8, 10].map((place) => Math.floor((place * (count - 1)) / 12));
  const isIn = () => random() < 0.5;
  const [wait, wrong, missed, extra] = places.toSorted(() => random() - 0.5);
  const hand = pick(hands, random);
  const seconds = pick(WAITS, random);
  const planted: Planted = {
    waits: isIn() ? [{ step: wait!, seconds }] : [],
    wrong: isIn() ? [{ step: wrong!, hand, by: pick([-2, -1, 1, 2], random) }] : [],
    missed: isIn() ? [{ step: missed!, hand }] : [],
    extra: isIn() ? [{ step: extra!, midi: score[hand][extra!]!.keys[0]!.midi + 1 }] : [],
  };
  return { planted, seconds };
}

const placesOf = ({ waits = [], wrong = [], missed = [], extra = [] }: Planted) => ({
  hesitation: waits.map(({ step }) => step),
  wrong: wrong.map(({ step }) => step),
  missed: missed.map(({ step }) => step),
  extra: extra.map(({ step }) => step + 1),
});

const stepsOf = (found: readonly Finding[], kind: Kind): readonly number[] =>
  found.flatMap((one) =>
    (one.kind === kind || (kind === 'hesitation' && one.kind === 'stop')) && 'step' in one
      ? [one.step]
      : [],
  );

const percent = (part: number, whole: number): string =>
  whole === 0 ? '-' : `${((100 * part) / whole).toFixed(1)} %`;

function benchPlayer(name: string, spread: number): void {
  const tallies = new Map(
    KINDS.map((kind): [Kind, Tally] => [kind, { planted: 0, found: 0, invented: 0 }]),
  );
  const bySize = new Map(WAITS.map((wait) => [wait, { planted: 0, found: 0 }]));
  const [tempos, evenness, times]: [number[], number[], number[]] = [[], [], []];
  /** Of the planted waits those that stand out of the playing, and of these those that are told; and invented ones that do. */
  const waited = { there: 0, found: 0, byChance: 0 };
  let clean = 0;
  for (let seed = FIRST_SEED; seed < FIRST_SEED + TAKES; seed++) {
    const random = seededRandom(seed);
    const item = pick(DECK, random);
    const score = scoreFor(item);
    const hands = handsOf(item.way);
    const playing: readonly Hand[] = hands === 'together' ? ['right', 'left'] : [hands];
    const { planted, seconds } = plant(score, playing, random);
    const tempo = 4 * pick(MARKS, random);
    const expected = expectedOf(score);
    const notes: PlayedNote[] = [];
    const take = perform(expected, {
      random,
      tempo,
      spread: spread / 1000,
      planted,
      onNote: (step, on, hand) => notes.push({ step, on, hand }),
    });
    const start = performance.now();
    const [measured] = judge(expected, take);
    times.push(performance.now() - start);
    const found = findingsOf(measured!, score);
    const places = placesOf(planted);
    const [wait = null] = places.hesitation;
    const waits = stepsWaitedFor(notes, 60 / tempo, wait);
    let isClean = true;
    for (const kind of KINDS) {
      const tally = tallies.get(kind)!;
      const heard = new Set(stepsOf(found, kind));
      const there = new Set(places[kind]);
      const invented = [...heard].filter((step) => !there.has(step)).length;
      const hit = [...there].filter((step) => heard.has(step)).length;
      tally.planted += there.size;
      tally.found += hit;
      tally.invented += invented;
      isClean &&= invented === 0;
      if (kind !== 'hesitation') continue;
      waited.byChance += [...heard].filter((step) => step !== wait && waits.has(step)).length;
      if (wait === null) continue;
      bySize.get(seconds)!.planted += 1;
      bySize.get(seconds)!.found += hit;
      if (!waits.has(wait)) continue;
      waited.there += 1;
      waited.found += hit;
    }
    if (isClean) clean += 1;
    tempos.push(Math.abs(measured!.tempo! / tempo - 1) * 100);
    for (const hand of playing) {
      const { unevenness } = measured!.hands[hand]!;
      // From note to note two onsets spread.
      if (unevenness !== null) evenness.push(unevenness - spread * Math.SQRT2);
    }
  }
  console.log(
    `\n${name}: ${(spread * Math.SQRT2).toFixed(1)} ms from note to note, ${TAKES} takes`,
  );
  for (const [kind, { planted, found, invented }] of tallies) {
    console.log(
      `  ${kind}: ${found} of ${planted} found (${percent(found, planted)}), ${invented} invented`,
    );
  }
  for (const [wait, { planted, found }] of bySize) {
    console.log(`  hesitations of ${wait * 1000} ms: ${found} of ${planted}`);
  }
  console.log(
    `  planted hesitations that stand out of the playing: ${waited.found} of ${waited.there}; invented ones that do: ${waited.byChance}`,
  );
  const worst = Math.max(...tempos);
  console.log(`  takes with nothing invented: ${clean} of ${TAKES}`);
  console.log(
    `  tempo: ${mean(tempos)!.toFixed(2)} % off on average, ${worst.toFixed(1)} % at most`,
  );
  console.log(
    `  unevenness: ${mean(evenness)!.toFixed(1)} ms off on average, ${mean(evenness.map(Math.abs))!.toFixed(1)} ms in size`,
  );
  console.log(
    `  ${mean(times)!.toFixed(1)} ms a take, ${Math.max(...times).toFixed(0)} ms at most`,
  );
}

export function benchListening(): void {
  for (const [name, spread] of Object.entries(PLAYERS)) benchPlayer(name, spread);
}
