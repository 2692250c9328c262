/** Every planted fault is found, and none invented, on every take of some hundreds. */
import { describe, expect, it } from 'vitest';
import { expectedOf } from '../../shared/listening/expected';
import { type Finding, findingsOf } from '../../shared/listening/findings';
import { judge } from '../../shared/listening/judge';
import { mean } from '../../shared/listening/statistics';
import { suggestedFluency } from '../../shared/listening/suggest';
import { DECK, handsOf, type Item } from '../../shared/music/deck';
import type { Hand } from '../../shared/music/fingering/types';
import type { Score } from '../../shared/music/score';
import { scoreOf } from '../../shared/music/score-of';
import { OPTIONS } from '../formats/scores';
import { perform, type Planted, type Playing, seededRandom } from './performer';

const scores = new Map<string, Score>();
function scoreFor(item: Item): Score {
  const known = scores.get(item.id) ?? scoreOf([item], { ...OPTIONS, pedal: false });
  scores.set(item.id, known);
  return known;
}

type Make = (choice: Choice) => { readonly planted: Planted; readonly told: readonly Told[] };
/** A finding by its kind and place. */
type Told = string;

interface Choice {
  readonly score: Score;
  readonly random: () => number;
  readonly hands: readonly Hand[];
  readonly tempo: number;
  readonly spread: number;
}

const HANDS: readonly Hand[] = ['right', 'left'];
const pick = <T>(values: readonly T[], random: () => number): T =>
  values[Math.floor(random() * values.length)]!;
const between = (low: number, high: number, random: () => number): number =>
  low + (high - low) * random();
/** Away from both ends, where a fault could be something else as well. */
const inside = ({ score, random }: Choice): number => {
  const count = Math.max(score.right.length, score.left.length);
  return 3 + Math.floor(random() * (count - 6));
};

const told = (finding: Finding): Told => {
  switch (finding.kind) {
    case 'wrong':
    case 'extra':
      return `${finding.kind} ${finding.step} ${finding.midi}`;
    case 'missed':
      return `missed ${finding.step} ${finding.hand}`;
    case 'stop':
    case 'hesitation':
    case 'break':
      return `${finding.kind} ${finding.step}`;
    case 'thumb late':
    case 'thumb loud':
    case 'uneven':
    case 'gap':
      return `${finding.kind} ${finding.hand}`;
    case 'join':
    case 'lead':
    case 'loose':
    case 'drift':
      return finding.kind;
  }
};

const midiAt = (score: Score, hand: Hand, step: number): number => score[hand][step]!.keys[0]!.midi;

const FAULTS: Readonly<Record<string, Make>> = {
  nothing: () => ({ planted: {}, told: [] }),
  hesitation: (choice) => {
    const step = inside(choice);
    const seconds = between(0.1, 0.3, choice.random);
    return { planted: { waits: [{ step, seconds }] }, told: [`hesitation ${step}`] };
  },
  stop: (choice) => {
    const step = inside(choice);
    return {
      planted: { waits: [{ step, seconds: between(1.2, 4, choice.random) }] },
      told: [`stop ${step}`],
    };
  },
  'wrong note': (choice) => {
    const [step, hand] = [inside(choice), pick(choice.hands, choice.random)];
    const by = pick([-2, -1, 1, 2], choice.random);
    const midi = midiAt(choice.score, hand, step) + by;
    return { planted: { wrong: [{ step, hand, by }] }, told: [`wrong ${step} ${midi}`] };
  },
  'missed note': (choice) => {
    const [step, hand] = [inside(choice), pick(choice.hands, choice.random)];
    return { planted: { missed: [{ step, hand }] }, told: [`missed ${step} ${hand}`] };
  },
  'extra note': (choice) => {
    const [step, hand] = [inside(choice), pick(choice.hands, choice.random)];
    const midi = midiAt(choice.score, hand, step) + pick([-1, 1], choice.random);
    return { planted: { extra: [{ step, midi }] }, told: [`extra ${step + 1} ${midi}`] };
  },
  'wrong and missed and extra': (choice) => {
    const count = Math.max(choice.score.right.length, choice.score.left.length);
    const [first, second, third] = [2, Math.floor(count / 2), count - 4] as const;
    const hand = pick(choice.hands, choice.random);
    const wrong = midiAt(choice.score, hand, first) + 1;
    const extra = midiAt(choice.score, hand, third) - 1;
    return {
      planted: {
        wrong: [{ step: first, hand, by: 1 }],
        missed: [{ step: second, hand }],
        extra: [{ step: third, midi: extra }],
      },
      told: [`wrong ${first} ${wrong}`, `missed ${second} ${hand}`, `extra ${third + 1} ${extra}`],
    };
  },
  'hesitation before a note that one hand misses': (choice) => {
    const [step, hand] = [inside(choice), pick(choice.hands, choice.random)];
    if (choice.hands.length < 2) return { planted: {}, told: [] };
    const seconds = between(0.1, 0.3, choice.random);
    return {
      planted: { waits: [{ step, seconds }], missed: [{ step, hand }] },
      told: [`hesitation ${step}`, `missed ${step} ${hand}`],
    };
  },
  'late thumb': (choice) => {
    const hand = pick(choice.hands, choice.random);
    return { planted: { thumbLate: { [hand]: 0.04 } }, told: [`thumb late ${hand}`] };
  },
  'loud thumb': (choice) => {
    const hand = pick(choice.hands, choice.random);
    return { planted: { thumbAccent: { [hand]: 24 } }, told: [`thumb loud ${hand}`] };
  },
  drift: ({ score, random, tempo, spread }) => {
    // Thirteen standard errors of the change that an even playing may seem to have, and no less than can be heard.
    const count = Math.max(score.right.length, score.left.length) - 2;
    const chance = 100 * spread * Math.SQRT2 * Math.sqrt(12 / count) * (tempo / 60);
    const size = Math.max(6, 13 * chance) + between(0, 5, random);
    if (size > 30) return { planted: {}, told: [] };
    return { planted: { drift: pick([-1, 1], random) * size }, told: ['drift'] };
  },
  'left hand late': ({ random, hands }) =>
    hands.length < 2
      ? { planted: {}, told: [] }
      : { planted: { leftLate: between(0.035, 0.06, random) }, told: ['lead'] },
  restart: (choice) => {
    const at = inside(choice);
    const from = pick([0, Math.max(0, at - 2)], choice.random);
    return {
      planted: { restarts: [{ at, from, pause: between(0.3, 2, choice.random) }] },
      told: [`break ${at}`],
    };
  },
  'end too early': (choice) => {
    const count = Math.max(choice.score.right.length, choice.score.left.length);
    const until = Math.max(5, Math.ceil(count / 4), inside(choice) - 1);
    return { planted: { until }, told: [`break ${until}`] };
  },
};

/** What the faults are told as well, being what they are: a thumb that is late throughout is uneven, too. */
const GOES_WITH: Readonly<Record<string, readonly string[]>> = {
  'late thumb': ['uneven', 'join', 'loose'],
};

function take(seed: number, make: Make) {
  const random = seededRandom(seed);
  const item = pick(DECK, random);
  const score = scoreFor(item);
  const expected = expectedOf(score);
  const hands = handsOf(item.way) === 'together' ? HANDS : [handsOf(item.way) as Hand];
  const tempo = between(160, 480, random);
  const spread = between(0.002, 0.006, random);
  const { planted, told: wanted } = make({ score, random, hands, tempo, spread });
  const playing: Playing = { random, tempo, spread, planted };
  const heard = perform(expected, playing);
  const [measured] = judge(expected, heard);
  return {
    item,
    score,
    tempo,
    planted,
    wanted,
    measured: measured!,
    found: findingsOf(measured!, score),
  };
}

const PER_FAULT = 30;

describe.each(Object.entries(FAULTS))('%s', (name, make) => {
  it('is found on every take, and nothing else', () => {
    for (let seed = 0; seed < PER_FAULT; seed++) {
      const { item, wanted, found, measured } = take(1000 * name.length + seed, make);
      const also = GOES_WITH[name] ?? [];
      const heard = found.filter(({ kind }) => !also.includes(kind)).map(told);
      expect(heard, `${item.id}, seed ${seed}`).toEqual(wanted);
      expect(measured.right + wanted.filter((one) => /wrong|missed/.test(one)).length).toBe(
        name === 'end too early' ? measured.right : measured.notes,
      );
    }
  });
});

describe('the measures', () => {
  it('have the tempo, with and without hesitations: 0.3 per cent off on average, 2 at most', () => {
    const errors = ['nothing', 'hesitation', 'stop', 'wrong note', 'restart'].flatMap((name) =>
      Array.from({ length: PER_FAULT }, (_, seed) => {
        const { tempo, measured } = take(seed, FAULTS[name]!);
        return Math.abs(measured.tempo! / tempo - 1) * 100;
      }),
    );
    expect(mean(errors)).toBeLessThan(0.3);
    expect(Math.max(...errors)).toBeLessThan(2);
  });
});
describe('the suggestion', () => {
  it.each([
    ['nothing', [4, 3]],
    ['hesitation', [2]],
    ['stop', [1]],
    ['wrong note', [1, 3]],
    ['restart', [0]],
    ['end too early', [0]],
  ] as const)('after %s is one of %s', (name, fluencies) => {
    for (let seed = 0; seed < PER_FAULT; seed++) {
      const { measured, score } = take(7000 + seed, FAULTS[name]!);
      expect(fluencies).toContain(suggestedFluency(measured, score));
    }
  });
});
