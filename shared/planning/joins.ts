/** The joins of an item: where a hand changes its position, each named by the drill for it. */
import { dayNumber } from '../log/day';
import type { Day, RunEvent } from '../log/events';
import type { HandTake } from '../log/run-take';
import { handsOf, type Item, itemAt, itemOf } from '../music/deck';
import type { PositionChange } from '../music/fingering/positions';
import type { Hand } from '../music/fingering/types';
import type { NameOf } from '../music/fingering/words';
import { scoreOf } from '../music/score-of';
import { fingeringFor, type Player } from './chosen-fingering';
import { type DrillId, joinDrillId } from './drills/kinds';

export interface Join {
  readonly id: DrillId;
  readonly hand: Hand;
  readonly change: PositionChange;
}

/** In the order of playing, right hand first; what comes again an octave higher is there once. */
export function joinsOf(player: Player, item: Item): readonly Join[] {
  const played = handsOf(item.way);
  const hands = played === 'together' ? (['right', 'left'] as const) : [played];
  return hands.flatMap((hand) => {
    const fingering = fingeringFor(player, itemAt(item.arpeggioIndex, `${hand}.2`), hand)!;
    const seen = new Set<string>();
    return fingering.changes.flatMap((change): readonly Join[] => {
      const { way, from, to } = change;
      const place = [way, from.finger, from.key % 12, to.finger, to.key % 12].join();
      if (seen.has(place)) return [];
      seen.add(place);
      return [{ id: joinDrillId(`${item.arpeggio}.${hand}`, fingering, change), hand, change }];
    });
  });
}

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
  const tallies = new Map<DrillId, Tally>();
  for (const { item, day, take } of runs) {
    const age = dayNumber(today) - dayNumber(day);
    if (take === undefined || age < 0) continue;
    const weight = take.certainty * 0.5 ** (age / HALF_LIFE);
    for (const { join, item: of, wait } of waitsAtJoins(player, itemOf(item), take.hands)) {
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
    .toSorted((a, b) => strength(b) - strength(a) || a.join.id.localeCompare(b.join.id))
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

/** For each join of an item the mean of the waits, in ms, in one take. */
function waitsAtJoins(
  player: Player,
  item: Item,
  hands: Readonly<Record<Hand, HandTake | null>>,
): readonly { readonly join: Join; readonly item: Item; readonly wait: number }[] {
  const score = scoreOf([item], {
    title: '',
    tempo: 240,
    grouping: 4,
    contraryForm: player.programme?.contraryForm ?? 'formula',
    pedal: false,
    fingeringOf: (one, hand) => fingeringFor(player, one, hand)?.plan ?? null,
  });
  return (['right', 'left'] as const).flatMap((hand) => {
    const waits = hands[hand]?.waits ?? [];
    const notes = score[hand];
    // In the other form of contrary motion these were other notes.
    if (waits.length !== notes.length) return [];
    const ofHand = itemAt(item.arpeggioIndex, `${hand}.2`);
    return joinsOf(player, ofHand).flatMap((join) => {
      const known = notes.flatMap(({ keys, change }, step) => {
        const wait = waits[step]!;
        if (change === null || wait === null) return [];
        const way = keys[0]!.midi > notes[step - 1]!.keys[0]!.midi ? 'up' : 'down';
        const isHere = way === join.change.way && (keys[0]!.midi - join.change.to.key) % 12 === 0;
        return isHere ? [Math.max(-STOPPED, Math.min(STOPPED, wait))] : [];
      });
      const wait = known.reduce((sum, one) => sum + one, 0) / known.length;
      return known.length === 0 ? [] : [{ join, item: ofHand, wait }];
    });
  });
}

/** "right hand, up: thumb under to C", "left hand, down: 3 over to F". */
export function joinText({ hand, change }: Join, nameOf: NameOf): string {
  const { way, kind, to } = change;
  const move = kind === 'thumb under' ? 'thumb under' : `${to.finger} over`;
  return `${hand} hand, ${way}: ${move} to ${nameOf(to.key)}`;
}
