/**
 * The oracle sees the truth: it tries rounds on a copy of the learner and takes the one that brings the 77 items nearest
 * to the target a second, with all chords of a note or only those that gain most. It looks one round ahead, so it is a
 * yardstick and no proof of an upper bound.
 */
import { type Item, itemAt, roundItems, WAYS, type Way } from '../../../shared/music/deck';
import { playableTempo } from '../../../shared/music/tempo';
import { costed, type MakePlanner, type Morning, NOTES, type Task } from './planner';

const GOALS = NOTES.flatMap((note) => roundItems(note, 'together.4')).map(({ index }) => index);
const MARGIN = 0.15;
/** What holds in a week counts, so that today's gloss does not. */
const AHEAD = 7;
const ASKED_WAYS: readonly Way[] = WAYS.filter((way) => way !== 'together.contrary');
const SIZES = [4, 7, 11];
/** What a run at about the level teaches on average, as some are not even. */
const QUALITY = 0.85;

/** What a round was worth when it was last weighed may have grown since, as things fade. */
const DAILY_HOPE = 1.2;

interface Option {
  readonly items: readonly Item[];
  task: Task;
  /** What it brings a second; -Infinity when no time is left for it today. */
  rate: number;
  lastRate: number;
  isFresh: boolean;
}

export const oracle: MakePlanner = ({ truth, traits }) => {
  const asked = Math.log2(traits.target / 4);
  /** Convex, as it takes nine items in ten and the last ones lag. */
  const lackOf = (level: number): number =>
    (MARGIN * Math.log1p(Math.exp(-(level - asked - MARGIN) / MARGIN))) ** 1.5;

  const kept = new Float64Array(truth.state.length);
  const before = new Float64Array(truth.state.length);

  const options = NOTES.flatMap((note) =>
    ASKED_WAYS.map((way): Option => {
      const items = roundItems(note, way);
      return { items, task: costed(items, traits.target), rate: 1, lastRate: 1, isFresh: false };
    }),
  );

  const lack = (day: number): number => {
    let sum = 0;
    for (const index of GOALS) sum += lackOf(truth.level(index, day));
    return sum;
  };

  const taskFor = (items: readonly Item[], number: number): Task => {
    const levels = items.map(({ index }) => truth.level(index, number)).toSorted((a, b) => a - b);
    const level = levels[Math.floor(0.4 * (levels.length - 1))]! - 0.15;
    return costed(items, playableTempo(4 * 2 ** level, 4));
  };

  const practise = (items: readonly Item[], number: number): void => {
    for (const { index } of items) truth.practise(index, number, QUALITY);
  };

  /** By what a run of each item does for its own arpeggio. */
  const byOwnGain = (items: readonly Item[], number: number): readonly Item[] => {
    const gains = items.map((item) => {
      const goal = itemAt(item.arpeggioIndex, 'together.4').index;
      const now = lackOf(truth.level(goal, number + AHEAD));
      truth.practise(item.index, number, QUALITY);
      const gain = now - lackOf(truth.level(goal, number + AHEAD));
      truth.state.set(before);
      return { item, gain };
    });
    return gains
      .toSorted((a, b) => b.gain - a.gain || a.item.index - b.item.index)
      .map(({ item }) => item);
  };

  const weigh = (option: Option, number: number, now: number, seconds: number): void => {
    before.set(truth.state);
    const sorted = byOwnGain(option.items, number);
    option.rate = -Infinity;
    for (const size of SIZES) {
      const items = sorted.slice(0, size).toSorted((a, b) => a.index - b.index);
      const task = taskFor(items, number);
      if (task.seconds > seconds) continue;
      practise(items, number);
      const rate = (now - lack(number + AHEAD)) / task.seconds;
      truth.state.set(before);
      if (rate > option.rate) {
        option.rate = rate;
        option.task = task;
      }
    }
    if (option.rate > -Infinity) option.lastRate = Math.max(1e-9, option.rate);
    option.isFresh = true;
  };

  const planFor = ({ number, seconds }: Morning): readonly Task[] => {
    const tasks: Task[] = [];
    for (const option of options) {
      option.rate = DAILY_HOPE * option.lastRate;
      option.isFresh = false;
    }
    let left = seconds;
    let now = lack(number + AHEAD);
    for (;;) {
      // What a round is worth falls with what is played before, so only the leader is weighed again.
      let leader = options[0]!;
      for (;;) {
        leader = options[0]!;
        for (const option of options) if (option.rate > leader.rate) leader = option;
        if (leader.isFresh || leader.rate === -Infinity) break;
        weigh(leader, number, now, left);
      }
      if (leader.rate === -Infinity) return tasks;
      practise(leader.task.items, number);
      left -= leader.task.seconds;
      tasks.push(leader.task);
      now = lack(number + AHEAD);
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
