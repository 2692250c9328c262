/** What the best choice of probes could do for the spread of the reach, so far as the model goes: all divisions are tried. */
import { dayOfNumber } from '../../shared/log/day';
import { type Item, WAYS } from '../../shared/music/deck';
import { newLearner } from '../../shared/learning/learner';
import { informationOf, reachOf } from '../../shared/learning/prediction';
import { mean } from './table';

/** All ways to divide a number among so many parts. */
function divisions(number: number, parts: number): readonly (readonly number[])[] {
  if (parts === 1) return [[number]];
  return Array.from({ length: number + 1 }, (_, first) =>
    divisions(number - first, parts - 1).map((rest) => [first, ...rest]),
  ).flat();
}

/** What is known of a new student before any run, as the model has it. */
function startOf(item: Item, day: number) {
  const learner = newLearner();
  const own = learner.variance[item.index]!;
  const noise = Math.exp(2 * learner.noise[0]!);
  const { tempo, high } = reachOf(learner, item, dayOfNumber(day));
  const variance = Math.log2(high / tempo) ** 2;
  // The share of an exact answer that a rating is expected to tell.
  const told = (informationOf(learner, item, [item], day) * (variance + noise)) / variance ** 2;
  return { covariance: learner.covariance, own, noise, told };
}

/** Mean spread over a deck of equal stages, in octaves of tempo, after probes that are divided in the best way. */
export function bestSpread(deck: readonly Item[], probes: number, day: number): number {
  const { covariance, own, noise, told } = startOf(deck[0]!, day);
  const size = Math.sqrt(covariance.length);
  const rows = [...new Set(deck.map(({ way }) => 1 + WAYS.indexOf(way)))];
  const inStage = deck.length / rows.length;
  const spreadAfter = (division: readonly number[]): number => {
    const known = covariance.slice();
    const gainsOf = (row: number) =>
      Array.from({ length: size }, (_, i) => known[i * size]! + known[i * size + row]!);
    /** What is not known of each probed item's own part, stage by stage. */
    const left = rows.map((): number[] => []);
    for (let turn = 0; turn < Math.max(...division); turn++) {
      for (const [i, row] of rows.entries()) {
        if (turn >= division[i]!) continue;
        const gains = gainsOf(row);
        const total = gains[0]! + gains[row]! + own + noise;
        left[i]!.push(own - (told * own ** 2) / total);
        for (const [at, cell] of known.entries()) {
          const product = gains[Math.floor(at / size)]! * gains[at % size]!;
          known[at] = cell - (told * product) / total;
        }
      }
    }
    return mean(
      rows.map((row, i) => {
        const gains = gainsOf(row);
        const shared = gains[0]! + gains[row]!;
        const others = Array.from({ length: inStage - left[i]!.length }, () => own);
        return mean([...left[i]!, ...others].map((rest) => Math.sqrt(shared + rest)));
      }),
    );
  };
  return Math.min(...divisions(probes, rows.length).map(spreadAfter));
}
