/** The joins of an item in the person's own note names. */
import { type Item, itemAt } from '../../shared/music/deck';
import { handQuestion, type Player } from '../../shared/planning/chosen-fingering';
import { joinsOf, joinText } from '../../shared/planning/joins';
import { nameOfKeys } from './name-of-keys';
import { chordText } from './words';

export interface JoinWords {
  readonly id: string;
  readonly text: string;
}

export function joinWordsOf(player: Player, item: Item): readonly JoinWords[] {
  const { names } = chordText(item.note, item.chord);
  return joinsOf(player, item).map((join) => {
    const way = `${join.hand}.2` as const;
    const { keys } = handQuestion(player, itemAt(item.arpeggioIndex, way), join.hand)!;
    return { id: join.id, text: joinText(join, nameOfKeys(keys, names)) };
  });
}

/** The words of a join that was noted once; null if the fingering has changed since and it is no join any more. */
export const joinWords = (player: Player, item: Item, id: string): string | null =>
  joinWordsOf(player, item).find((join) => join.id === id)?.text ?? null;
