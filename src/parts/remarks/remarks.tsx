/** Remarks, newest first, and a field for a new one about an item, or about the student as a whole (`about` null). */
import { useMemo, useState } from 'preact/hooks';
import { LONGEST_TEXT } from '../../../shared/formats/event';
import type { EventId, Judge } from '../../../shared/log/events';
import { chordOf } from '../../../shared/music/chords';
import { type ItemId, itemOf } from '../../../shared/music/deck';
import type { Remark } from '../../../shared/planning/student';
import { Button } from '../button/button';
import { dateText } from '../dates';
import { joinWords, joinWordsOf } from '../join-words';
import { say } from '../notice/notice';
import { chordText, wayText } from '../words';
import { useStore } from '../../store-context';
import { type Regretted, TakeBack } from '../take-back';
import styles from './remarks.module.css';

interface RemarksProps {
  readonly about: ItemId | null;
  /** In the order in which they were made. */
  readonly remarks: readonly Remark[];
  /** Who is writing. */
  readonly by?: Judge;
}

export function Remarks({ about, remarks, by = 'player' }: RemarksProps) {
  const store = useStore();
  const [text, setText] = useState('');
  const [join, setJoin] = useState('');
  const [regretted, setRegretted] = useState<Regretted | null>(null);

  const save = async (event: Event) => {
    event.preventDefault();
    if (text.trim() === '') return;
    try {
      const [made] = await store.record([
        { kind: 'remark', about, text: text.trim(), by, ...(join !== '' && { join }) },
      ]);
      setText('');
      setJoin('');
      say('Remark saved.', { label: 'Undo', do: () => void undo(made!.id) });
    } catch (error) {
      // The text stays in the field.
      say(error instanceof Error ? error.message : 'The remark could not be saved.');
    }
  };

  const undo = async (id: EventId) => {
    try {
      await store.record([{ kind: 'void', events: [id] }]);
    } catch {
      say('This could not be undone now.', { label: 'Try again', do: () => void undo(id) });
    }
  };

  return (
    <div>
      <ul class={styles.list}>
        {remarks.toReversed().map((remark) => (
          <li key={remark.id} class={styles.remark}>
            <p>
              {remark.about !== about && <ItemName id={remark.about} />}
              <JoinName remark={remark} />
              {remark.text}
            </p>
            <p class={styles.day}>
              {remark.by === 'teacher' && 'Teacher, '}
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
            required
            maxLength={LONGEST_TEXT}
            value={text}
            onInput={(event) => setText(event.currentTarget.value)}
          />
        </label>
        {about !== null && <JoinField about={about} join={join} onChange={setJoin} />}
        {/* Never disabled: it would lose the focus when the remark is saved. */}
        <Button type="submit">Save remark</Button>
      </form>
      <TakeBack regretted={regretted} onClose={() => setRegretted(null)} />
    </div>
  );
}

interface JoinFieldProps {
  readonly about: ItemId;
  readonly join: string;
  readonly onChange: (join: string) => void;
}

/** A remark may be about one join of an item. */
function JoinField({ about, join, onChange }: JoinFieldProps) {
  const student = useStore().student.value;
  const joins = useMemo(() => joinWordsOf(student, itemOf(about)), [student, about]);
  return (
    <label class={styles.label}>
      About
      <select
        class={styles.join}
        value={join}
        onChange={(event) => onChange(event.currentTarget.value)}
      >
        <option value="">all of it</option>
        {joins.map(({ id, text }) => (
          <option key={id} value={id}>
            {text}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Which join a remark is about, as long as the fingering has it. */
function JoinName({ remark }: { readonly remark: Remark }) {
  const student = useStore().student.value;
  if (remark.about === null || remark.join === null) return null;
  const words = joinWords(student, itemOf(remark.about), remark.join);
  return words === null ? null : <span class={styles.about}>{words}: </span>;
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
