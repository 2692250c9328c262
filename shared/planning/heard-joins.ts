/** Which joins wait longest, of all takes: for the report, and for what is planned. */
import { dayNumber } from '../log/day';
import type { Day, RunEvent } from '../log/events';
import { type Item, itemAt, type ItemId, itemOf } from '../music/deck';
import type { Hand } from '../music/fingering/types';
import { scoreOf } from '../music/score-of';
import { fingeringFor, type Player } from './chosen-fingering';
import type { DrillId } from './drills/kinds';
import { type Join, joinsOf } from './joins';

/** A join as it was heard in runs, over two octaves and four, alone and with the other hand. */
export interface HeardJoin extends Join {
  /** The hand's arpeggio over two octaves. */
  readonly item: Item;
  /** Mean of its waits in ms; takes that are surer and fresher count more. */
  readonly wait: number;
  /** How many takes had it, and the day of the last. */
  readonly takes: number;
  readonly last: Day;
}

/** Days after which a take says half as much (P). */
const HALF_LIFE = 14;
/** Milliseconds: above what a microphone hears wrongly of the mean of a join; and beyond which a wait is a stop (P). */
const LEAST = 20;
const STOPPED = 500;
/** As if so much of a steady take had been heard besides: one take of long ago does not outdo many (P). */
const DOUBT = 0.5;

/**
 * The joins that wait longest, the weakest first, of runs in any order, as the hand is fingered today; what comes after
 * `today` and runs that were not heard count for nothing. Empty where no join clearly waits.
 */
export function weakestJoins(
  player: Player,
  runs: readonly RunEvent[],
  today: Day,
): readonly HeardJoin[] {
  const places = new Map<ItemId, readonly Placed[]>();
  const tallies = new Map<DrillId, Tally>();
  for (const { item, day, take } of runs) {
    const age = dayNumber(today) - dayNumber(day);
    if (take === undefined || take.certainty === 0 || age < 0) continue;
    if (!places.has(item)) places.set(item, placesOf(player, itemOf(item)));
    const weight = take.certainty * 0.5 ** (age / HALF_LIFE);
    for (const { join, item: of, notes, steps } of places.get(item)!) {
      const wait = meanWait(take.hands[join.hand]?.waits ?? [], notes, steps);
      if (wait === null) continue;
      const tally = tallies.get(join.id) ?? {
        join,
        item: of,
        weight: 0,
        sum: 0,
        takes: 0,
        last: day,
      };
      tallies.set(join.id, {
        ...tally,
        weight: tally.weight + weight,
        sum: tally.sum + weight * wait,
        takes: tally.takes + 1,
        last: day > tally.last ? day : tally.last,
      });
    }
  }
  const strength = ({ sum, weight }: Tally): number => sum / (weight + DOUBT);
  return [...tallies.values()]
    .filter(({ sum, weight }) => sum >= LEAST * weight)
    .toSorted((a, b) => strength(b) - strength(a) || (a.join.id < b.join.id ? -1 : 1))
    .map(({ join, item, sum, weight, takes, last }) => ({
      ...join,
      item,
      wait: Math.round(sum / weight),
      takes,
      last,
    }));
}

interface Tally {
  readonly join: Join;
  readonly item: Item;
  readonly weight: number;
  readonly sum: number;
  readonly takes: number;
  readonly last: Day;
}

/** Where a join comes in an item. */
interface Placed {
  readonly join: Join;
  readonly item: Item;
  /** Of the hand, in the whole item. */
  readonly notes: number;
  readonly steps: readonly number[];
}

function placesOf(player: Player, item: Item): readonly Placed[] {
  const score = scoreOf([item], {
    title: '',
    tempo: 240,
    grouping: 4,
    contraryForm: player.programme?.contraryForm ?? 'formula',
    pedal: false,
    fingeringOf: (one, hand) => fingeringFor(player, one, hand)?.plan ?? null,
  });
  return (['right', 'left'] as const satisfies readonly Hand[]).flatMap((hand) => {
    const line = score[hand];
    const ofHand = itemAt(item.arpeggioIndex, `${hand}.2`);
    return joinsOf(player, ofHand).map((join) => {
      const steps = line.flatMap(({ keys, change }, step) => {
        if (change === null) return [];
        const way = keys[0]!.midi > line[step - 1]!.keys[0]!.midi ? 'up' : 'down';
        const isHere = way === join.change.way && (keys[0]!.midi - join.change.to.key) % 12 === 0;
        return isHere ? [step] : [];
      });
      return { join, item: ofHand, notes: line.length, steps };
    });
  });
}

/** In ms, over the steps that are known; null if none is, or where in the other form of contrary motion these were other notes. */
function meanWait(
  waits: readonly (number | null)[],
  notes: number,
  steps: readonly number[],
): number | null {
  if (waits.length !== notes) return null;
  const known = steps.flatMap((step) => waits[step] ?? []);
  if (known.length === 0) return null;
  const sum = known.reduce((total, wait) => total + Math.max(-STOPPED, Math.min(STOPPED, wait)), 0);
  return sum / known.length;
}
