/** What the student is called on the screens and in the report. */
import { useState } from 'preact/hooks';
import { LONGEST_NAME } from '../../../shared/formats/event';
import { Button } from '../button/button';
import { say } from '../notice/notice';
import { useStore } from '../../store-context';
import styles from './name-field.module.css';

export function NameField({ onSaved }: { readonly onSaved?: () => void }) {
  const store = useStore();
  const known = store.student.value.name ?? '';
  const [typed, setTyped] = useState<string | null>(null);
  const name = (typed ?? known).trim();

  const save = async (event: Event) => {
    event.preventDefault();
    try {
      await store.record([{ kind: 'name', name }]);
      setTyped(null);
      say('Name saved.');
      onSaved?.();
    } catch (error) {
      say(error instanceof Error ? error.message : 'The name could not be saved.');
    }
  };

  return (
    <form class={styles.form} onSubmit={(event) => void save(event)}>
      <label class={styles.label}>
        Name of the student
        <input
          type="text"
          class={styles.input}
          autocomplete="off"
          maxLength={LONGEST_NAME}
          value={typed ?? known}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <Button type="submit" disabled={name === known}>
        Save name
      </Button>
    </form>
  );
}
