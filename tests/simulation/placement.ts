/** How fast a few probing runs place a student who plays half of it already: chosen for information, or drawn. */
import { dayOfNumber } from '../../shared/log/day';
import type { Item } from '../../shared/music/deck';
import type { Tempo } from '../../shared/music/tempo';
import { type Learner as Model, newLearner } from '../../shared/learning/learner';
import { observe } from '../../shared/learning/observe';
import { reachOf } from '../../shared/learning/prediction';
import { deckOf } from '../../shared/learning/readiness';
import { nextProbe } from '../../shared/planning/placement';
import { seededRandom } from '../../src/demo/random';
import type { Extent } from './jobs';
import { FAMILIES } from './learner';
import { FIRST_DAY, makeLearner, programmeFor } from './student-life';
import { mean, table } from './table';

const RUNS = [0, 2, 4, 6, 8, 10, 15, 20];

interface Probe {
  readonly item: Item;
  readonly tempo: Tempo;
}

type Probing = 'chosen' | 'drawn, at the reach' | 'drawn, at the target';
const PROBINGS: readonly Probing[] = ['chosen', 'drawn, at the reach', 'drawn, at the target'];

/** Mean spread of the reach over the deck, and mean distance from the truth, both in octaves of tempo. */
interface Sharpness {
  readonly spread: number;
  readonly distance: number;
}

function probed(family: (typeof FAMILIES)[number], number: number, how: Probing): Sharpness[] {
  // The fourth of every four students enters half-way.
  const learner = makeLearner({ family, group: 'uneven', number: 4 * number + 3, seed: 2026 });
  const programme = programmeFor(learner.traits, 20);
  const all = {
    ...programme,
    stages: Object.fromEntries(
      Object.entries(programme.stages).map(([stage, goal]) => [
        stage,
        { ...goal, asked: stage !== 'together.contrary' },
      ]),
    ) as typeof programme.stages,
  };
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
  learner: ReturnType<typeof makeLearner>,
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

export function placementText({ students }: Extent): string {
  const rows = PROBINGS.map((how) => {
    const lives = FAMILIES.flatMap((family) =>
      Array.from({ length: Math.ceil(students / 4) }, (_, number) => probed(family, number, how)),
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
  return `## Placement

Uneven students who enter half-way, all four stages asked for. Mean spread of the reach over the 308 items after so many
probing runs, and mean distance of the reach from the truth as the student would rate it; both in octaves of tempo.

${table(['probes', ...RUNS.map(String)], rows)}`;
}
