/** The notes of an item in big type and on the drawn keyboard. */
import { useMemo } from 'preact/hooks';
import { handsOf, type Item, motionOf } from '../../../shared/music/deck';
import type { Tempo } from '../../../shared/music/tempo';
import { keysOfHand } from '../../../shared/music/score';
import { Figures } from '../../parts/figures/figures';
import { itemScore } from '../../parts/item-score';
import { Keyboard } from '../../parts/keyboard/keyboard';
import { Staff } from '../../parts/staff/staff';
import { chordText } from '../../parts/words';
import { preferences } from '../../preferences';
import { useStore } from '../../store-context';
import styles from './item-notes.module.css';

interface ItemNotesProps {
  readonly item: Item;
  readonly tempo: Tempo;
}

export function ItemNotes({ item, tempo }: ItemNotesProps) {
  const student = useStore().student.value;
  const preferred = preferences.value;
  const text = chordText(item.note, item.chord);
  const score = useMemo(
    () => itemScore(student, item, tempo, preferred),
    [student, item, tempo, preferred],
  );
  const [right, left] = [keysOfHand(score.right), keysOfHand(score.left)];
  const all = [...right, ...left];
  return (
    <>
      <p class={styles.notes}>
        <span class="spoken">{text.spoken}</span>
        <span aria-hidden="true">{text.notes}</span>
        <span class={styles.figures} aria-hidden="true">
          <Figures chord={item.chord} />
        </span>
      </p>
      <Keyboard
        lowest={Math.min(...all)}
        highest={Math.max(...all)}
        right={right}
        left={left}
        label={`The keys: ${text.spoken}`}
      />
      <div class={styles.staff} data-hands={handsOf(item.way)} data-motion={motionOf(item.way)}>
        <Staff score={score} at={null} description={`${text.spoken}, up and down`} />
      </div>
    </>
  );
}
