/** How fast a few probing runs place a student who plays half of it already: chosen for information, or drawn. */
import { dayOfNumber } from '../../shared/log/day';
import type { Programme } from '../../shared/log/programme';
import type { Item } from '../../shared/music/deck';
import type { Tempo } from '../../shared/music/tempo';
import { type Learner as Model, newLearner } from '../../shared/learning/learner';
import { observe } from '../../shared/learning/observe';
import { reachOf } from '../../shared/learning/prediction';
import { deckOf } from '../../shared/learning/readiness';
import { nextProbe } from '../../shared/planning/placement';
import { seededRandom } from '../../src/demo/random';
import { bestSpread } from './best-probes';
import type { Extent } from './jobs';
import { FAMILIES, type FamilyName, type Learner as Student } from './learner';
import { FIRST_DAY, makeLearner, programmeFor } from './student-life';
import { mean, table } from './table';

const RUNS = [0, 2, 4, 6, 8, 10, 15, 20];

interface Probe {
  readonly item: Item;
  readonly tempo: Tempo;
}

const PROBINGS = ['chosen', 'drawn, at the reach', 'drawn, at the target'] as const;
type Probing = (typeof PROBINGS)[number];

/** Mean spread of the reach over the deck, and mean distance from the truth, both in octaves of tempo. */
interface Sharpness {
  readonly spread: number;
  readonly distance: number;
}

/** The fourth of every four students enters half-way. */
const studentOf = (family: FamilyName, number: number): Student =>
  makeLearner({ family, group: 'uneven', number: 4 * number + 3, seed: 2026 });

function programmeOf({ traits }: Student): Programme {
  const programme = programmeFor(traits, 20);
  const stages = Object.entries(programme.stages).map(([stage, goal]) => [
    stage,
    { ...goal, asked: stage !== 'together.contrary' },
  ]);
  return { ...programme, stages: Object.fromEntries(stages) as Programme['stages'] };
}

function probed(learner: Student, number: number, how: Probing): Sharpness[] {
  const all = programmeOf(learner);
  const deck = deckOf(all);
  const model = newLearner();
  const day = dayOfNumber(FIRST_DAY);
  const random = seededRandom(number + 77);
  const draw = (): Probe => {
    const item = deck[Math.floor(random.share() * deck.length)]!;
    const tempo = how === 'drawn, at the target' ? learner.traits.target : reach(model, item);
    return { item, tempo };
  };
  const reach = (of: Model, item: Item): Tempo => reachOf(of, item, day).tempo;
  const sharpness: Sharpness[] = [];
  for (let run = 0; run <= RUNS.at(-1)!; run++) {
    if (RUNS.includes(run)) sharpness.push(sharpnessOf(model, deck, day, learner));
    const { item, tempo } = how === 'chosen' ? nextProbe(model, all, { day })! : draw();
    const fluency = learner.play(item.index, Math.log2(tempo / 4), FIRST_DAY);
    observe(model, item, { tempo, fluency, day: FIRST_DAY });
  }
  return sharpness;
}

function sharpnessOf(
  model: Model,
  deck: readonly Item[],
  day: string,
  learner: Student,
): Sharpness {
  const reaches = deck.map((item) => reachOf(model, item, day));
  const spread = mean(reaches.map(({ tempo, high }) => Math.log2(high / tempo)));
  const distance = mean(
    deck.map((item, i) =>
      Math.abs(
        Math.log2(reaches[i]!.tempo / 4) -
          learner.truth.level(item.index, FIRST_DAY) -
          learner.traits.bias,
      ),
    ),
  );
  return { spread, distance };
}

/** Mean distance of the items from the middle of their stage: what stays when that is known exactly. */
function distanceWithin(learner: Student): number {
  const deck = deckOf(programmeOf(learner));
  return mean(
    [...new Set(deck.map(({ way }) => way))].map((stage) => {
      const levels = deck
        .filter(({ way }) => way === stage)
        .map(({ index }) => learner.truth.level(index, FIRST_DAY));
      const middle = mean(levels);
      return mean(levels.map((level) => Math.abs(level - middle)));
    }),
  );
}

export function placementText({ students }: Extent): string {
  const numbers = Array.from({ length: Math.ceil(students / 2) }, (_, number) => number);
  const rows = PROBINGS.map((how) => {
    const lives = numbers.flatMap((number) =>
      FAMILIES.map((family) => probed(studentOf(family, number), number, how)),
    );
    const cells = RUNS.map((_, i) => {
      const [spread, distance] = [
        mean(lives.map((life) => life[i]!.spread)),
        mean(lives.map((life) => life[i]!.distance)),
      ];
      return `${spread.toFixed(3)}, ${distance.toFixed(3)}`;
    });
    return [how, ...cells];
  });
  const within = mean(
    numbers.flatMap((number) =>
      FAMILIES.map((family) => distanceWithin(studentOf(family, number))),
    ),
  );
  const deck = deckOf(programmeOf(studentOf('skill', 0)));
  const best = RUNS.map((runs) => bestSpread(deck, runs, FIRST_DAY).toFixed(3));
  return `## Placement

Uneven students who enter half-way, all four stages asked for. Mean spread of the reach over the 308 items after so many
probing runs, and mean distance of the reach from the truth as the student would rate it; both in octaves of tempo. The
last line is the least spread that any division of so many runs among the stages could leave, so far as the model goes.
Each item lies apart from the middle of its stage by ${within.toFixed(3)} on average, which probes of others cannot tell.

${table(['probes', ...RUNS.map(String)], [...rows, ['best division, spread', ...best]])}`;
}
