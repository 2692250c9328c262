/** The notes of an item in big type and on the drawn keyboard. */
import { useMemo } from 'preact/hooks';
import type { Item } from '../../../shared/music/deck';
import { type ContraryForm, type Key, sequenceOf, type Step } from '../../../shared/music/sequence';
import { Figures } from '../../parts/figures/figures';
import { Keyboard } from '../../parts/keyboard/keyboard';
import { chordText } from '../../parts/words';
import { preferences } from '../../preferences';
import styles from './item-notes.module.css';

interface ItemNotesProps {
  readonly item: Item;
  readonly contraryForm: ContraryForm;
}

const keysOf = (steps: readonly Step[], hand: 'right' | 'left'): readonly number[] => [
  ...new Set(steps.map((step) => step[hand]).flatMap((key: Key | null) => key?.midi ?? [])),
];

export function ItemNotes({ item, contraryForm }: ItemNotesProps) {
  const { blackNames } = preferences.value;
  const text = chordText(item.note, item.chord);
  const { right, left } = useMemo(() => {
    const steps = sequenceOf(item, { contraryForm, blackNames });
    return { right: keysOf(steps, 'right'), left: keysOf(steps, 'left') };
  }, [item, contraryForm, blackNames]);
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
    </>
  );
}
