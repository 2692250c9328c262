/**
 * The invented student's hands: what they can really do, which the planner never sees. Deliberately not the learner
 * model's own formula, so that the estimates on the screens are as wrong as estimates are.
 */
import { dayNumber } from '../../shared/log/day';
import type { Day, Fluency } from '../../shared/log/events';
import { CHORD_IDS } from '../../shared/music/chords';
import { DECK, isBlack, type Item, WAYS, type Way } from '../../shared/music/deck';
import type { Tempo } from '../../shared/music/tempo';
import type { Random } from './random';

export interface Player {
  /** How a run comes out; the player learns from it. */
  play(item: Item, tempo: Tempo, day: Day): Fluency;
}

/** All in octaves of tempo. The left hand lags, and inversions with a second between their notes sit badly. */
const START = Math.log2(33);
const WAY_EASE: Readonly<Record<Way, number>> = {
  'right.2': 0.15,
  'left.2': -0.2,
  'together.2': -0.3,
  'together.4': -0.5,
  'together.contrary': -0.45,
  'right.4': 0,
  'left.4': -0.3,
};
const CHORD_EASE = [0.15, 0.1, 0, 0.05, 0, -0.05, -0.05, -0.1, -0.2, -0.35, 0.1] as const;
const BLACK_EASE = -0.15;
const OWN_SPREAD = 0.2;
const RUN_SPREAD = 0.3;
/** Gained by practising the item itself, and by all practice in that way. */
const ITEM_GAIN = { most: 0.75, runs: 8 };
const WAY_GAIN = { most: 0.5, runs: 260 };
const RUST = 0.05;
const CUTS = [-0.8, -0.4, 0, 0.5] as const;

const gain = (runs: number, { most, runs: half }: { most: number; runs: number }): number =>
  most * (1 - Math.exp(-runs / half));

export function newPlayer(random: Random): Player {
  const own = DECK.map(() => OWN_SPREAD * random.normal());
  const runs = new Map<Item, number>();
  const lastDay = new Map<Item, number>();
  const wayRuns = new Map<Way, number>(WAYS.map((way) => [way, 0]));

  const level = (item: Item, day: number): number => {
    const pause = day - (lastDay.get(item) ?? day);
    return (
      START +
      WAY_EASE[item.way] +
      CHORD_EASE[CHORD_IDS.indexOf(item.chord)]! +
      (isBlack(item.note) ? BLACK_EASE : 0) +
      own[item.index]! +
      gain(runs.get(item) ?? 0, ITEM_GAIN) +
      gain(wayRuns.get(item.way)!, WAY_GAIN) -
      RUST * Math.log2(1 + pause)
    );
  };

  return {
    play(item, tempo, day) {
      const number = dayNumber(day);
      const margin = level(item, number) + RUN_SPREAD * random.normal() - Math.log2(tempo / 4);
      runs.set(item, (runs.get(item) ?? 0) + 1);
      wayRuns.set(item.way, wayRuns.get(item.way)! + 1);
      lastDay.set(item, number);
      return CUTS.filter((cut) => margin >= cut).length as Fluency;
    },
  };
}
