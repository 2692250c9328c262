/**
 * A planner that sees the truth: it tries rounds on a copy of the learner and takes the one that brings the items asked
 * for nearest to the target a second, with all chords of a note or only those that gain most; of single hands also one
 * after the other, as one alone brings nothing where the other lags. It looks one entry ahead, so it is a yardstick and
 * no proof of an upper bound.
 */
import { itemAt, roundItems, type StartingNote, type Way } from '../../../shared/music/deck';
import { playableTempo } from '../../../shared/music/tempo';
import { costed, type MakePlanner, type Morning, NOTES, type Task } from './planner';

const GOALS = NOTES.flatMap((note) => roundItems(note, 'together.4')).map(({ index }) => index);
const MARGIN = 0.1;
/** So that the last come up with the others: best of six ways of counting, among them leaving out the hardest tenth. */
const POWER = 4;
/** What holds in three weeks counts, so that today's gloss does not. */
const AHEAD = 21;
const WAYS_OF_ENTRY: readonly (readonly Way[])[] = [
  ['together.4'],
  ['together.2'],
  ['right.2'],
  ['left.2'],
  ['right.2', 'left.2'],
  ['right.4', 'left.4'],
  ['right.4'],
  ['left.4'],
];
/** Single items only where no round fits any more. */
const SIZES = [11, 9, 7, 5, 4, 1];
/** What a run at about the level teaches on average, as some are not even. */
const QUALITY = 0.85;
/** Below its level in octaves a round is played. */
const EASE = 0.25;

interface Option {
  readonly note: StartingNote;
  readonly ways: readonly Way[];
  tasks: readonly Task[];
  /** What it brings a second; -Infinity when no time is left for it today. */
  rate: number;
  isFresh: boolean;
}

const secondsOf = (tasks: readonly Task[]): number =>
  tasks.reduce((sum, { seconds }) => sum + seconds, 0);

export const oracle: MakePlanner = ({ truth, traits }) => {
  const asked = Math.log2(traits.target / 4);
  const lackOf = (level: number): number => {
    const lack = MARGIN * Math.log1p(Math.exp(-(level - asked - MARGIN) / MARGIN));
    return lack ** POWER;
  };

  const kept = new Float64Array(truth.state.length);
  const before = new Float64Array(truth.state.length);

  const options = NOTES.flatMap((note) =>
    WAYS_OF_ENTRY.map((ways): Option => ({ note, ways, tasks: [], rate: 1, isFresh: false })),
  );

  const lackOn = (day: number): number =>
    GOALS.reduce((sum, index) => sum + lackOf(truth.level(index, day)), 0);

  const taskOf = (arpeggios: readonly number[], way: Way, number: number): Task => {
    const items = arpeggios.map((arpeggio) => itemAt(arpeggio, way));
    const levels = items.map(({ index }) => truth.level(index, number)).toSorted((a, b) => a - b);
    const level = levels[Math.floor(0.4 * (levels.length - 1))]! - EASE;
    return costed(items, playableTempo(4 * 2 ** level, 4));
  };

  const practise = (tasks: readonly Task[], number: number): void => {
    for (const { items } of tasks) {
      for (const { index } of items) truth.practise(index, number, QUALITY);
    }
  };

  /** The arpeggios of a note by what a run in each of the ways does for what is asked of them. */
  const byOwnGain = ({ note, ways }: Option, number: number): readonly number[] =>
    roundItems(note, 'together.4')
      .map(({ index, arpeggioIndex }) => {
        const now = lackOf(truth.level(index, number + AHEAD));
        for (const way of ways) {
          truth.practise(itemAt(arpeggioIndex, way).index, number, QUALITY);
        }
        const gain = now - lackOf(truth.level(index, number + AHEAD));
        truth.state.set(before);
        return { arpeggioIndex, gain };
      })
      .toSorted((a, b) => b.gain - a.gain || a.arpeggioIndex - b.arpeggioIndex)
      .map(({ arpeggioIndex }) => arpeggioIndex);

  const weigh = (option: Option, number: number, now: number, seconds: number): void => {
    before.set(truth.state);
    const sorted = byOwnGain(option, number);
    option.rate = -Infinity;
    for (const size of SIZES) {
      const arpeggios = sorted.slice(0, size).toSorted((a, b) => a - b);
      const tasks = option.ways.map((way) => taskOf(arpeggios, way, number));
      if (secondsOf(tasks) > seconds || (size === 1 && option.rate > -Infinity)) continue;
      practise(tasks, number);
      const rate = (now - lackOn(number + AHEAD)) / secondsOf(tasks);
      truth.state.set(before);
      if (rate > option.rate) {
        option.rate = rate;
        option.tasks = tasks;
      }
    }
    option.isFresh = true;
  };

  const planFor = ({ number, seconds }: Morning): readonly Task[] => {
    const tasks: Task[] = [];
    for (const option of options) {
      option.rate = Infinity;
      option.isFresh = false;
    }
    let left = seconds;
    let now = lackOn(number + AHEAD);
    for (;;) {
      // What an entry is worth falls with what is played before, so only the leader is weighed again.
      let leader = options[0]!;
      for (;;) {
        leader = options[0]!;
        for (const option of options) if (option.rate > leader.rate) leader = option;
        if (leader.isFresh || leader.rate === -Infinity) break;
        weigh(leader, number, now, left);
      }
      if (leader.rate === -Infinity) return tasks;
      practise(leader.tasks, number);
      left -= secondsOf(leader.tasks);
      tasks.push(...leader.tasks);
      now = lackOn(number + AHEAD);
      for (const option of options) option.isFresh = false;
    }
  };

  return {
    plan: (morning) => {
      kept.set(truth.state);
      const tasks = planFor(morning);
      truth.state.set(kept);
      return tasks;
    },
  };
};
