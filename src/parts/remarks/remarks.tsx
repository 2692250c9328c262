/** Remarks, newest first, and a field for a new one about an item, or about the student as a whole (`about` null). */
import { useState } from 'preact/hooks';
import { LONGEST_TEXT } from '../../../shared/formats/event';
import { chordOf } from '../../../shared/music/chords';
import { type ItemId, itemOf } from '../../../shared/music/deck';
import type { Remark } from '../../../shared/planning/student';
import { Button } from '../button/button';
import { dateText } from '../dates';
import { say } from '../notice/notice';
import { chordText, wayText } from '../words';
import { useStore } from '../../store-context';
import { type Regretted, TakeBack } from '../take-back';
import styles from './remarks.module.css';

interface RemarksProps {
  readonly about: ItemId | null;
  /** In the order in which they were made. */
  readonly remarks: readonly Remark[];
}

export function Remarks({ about, remarks }: RemarksProps) {
  const store = useStore();
  const [text, setText] = useState('');
  const [regretted, setRegretted] = useState<Regretted | null>(null);

  const save = async (event: Event) => {
    event.preventDefault();
    if (text.trim() === '') return;
    try {
      await store.record([{ kind: 'remark', about, text: text.trim() }]);
      setText('');
      say('Remark saved.');
    } catch (error) {
      // The text stays in the field.
      say(error instanceof Error ? error.message : 'The remark could not be saved.');
    }
  };

  return (
    <div>
      <ul class={styles.list}>
        {remarks.toReversed().map((remark) => (
          <li key={remark.id} class={styles.remark}>
            <p>
              {remark.about !== about && <ItemName id={remark.about} />}
              {remark.text}
            </p>
            <p class={styles.day}>
              {dateText(remark.day)}
              <span data-screen-only>
                <Button
                  kind="quiet"
                  onClick={() =>
                    setRegretted({ id: remark.id, what: 'this remark', which: remark.text })
                  }
                >
                  Take back
                </Button>
              </span>
            </p>
          </li>
        ))}
      </ul>
      <form class={styles.form} onSubmit={(event) => void save(event)} data-screen-only>
        <label class={styles.label}>
          New remark
          <textarea
            class={styles.text}
            rows={2}
            maxLength={LONGEST_TEXT}
            value={text}
            onInput={(event) => setText(event.currentTarget.value)}
          />
        </label>
        <Button type="submit" disabled={text.trim() === ''}>
          Save remark
        </Button>
      </form>
      <TakeBack regretted={regretted} onClose={() => setRegretted(null)} />
    </div>
  );
}

/** Before a remark that stands elsewhere than with its item. */
function ItemName({ id }: { readonly id: ItemId | null }) {
  if (id === null) return null;
  const { note, chord, way } = itemOf(id);
  return (
    <span class="music">
      {chordText(note, chord).bottom}, {chordOf(chord).shortName}, {wayText(way)}:{' '}
    </span>
  );
}
