/** The joins of an item: where a hand changes its position, each named by the drill for it. */
import { handsOf, type Item, itemAt } from '../music/deck';
import type { PositionChange } from '../music/fingering/positions';
import type { Hand } from '../music/fingering/types';
import type { NameOf } from '../music/fingering/words';
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

/** "right hand, up: thumb under to C", "left hand, down: 3 over to F". */
export function joinText({ hand, change }: Join, nameOf: NameOf): string {
  const { way, kind, to } = change;
  const move = kind === 'thumb under' ? 'thumb under' : `${to.finger} over`;
  return `${hand} hand, ${way}: ${move} to ${nameOf(to.key)}`;
}
