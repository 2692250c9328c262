/** Erases everything, after a backup has been offered and a word has been typed. */
import { useId, useState } from 'preact/hooks';
import { Button } from '../../parts/button/button';
import { Dialog, DialogActions } from '../../parts/dialog/dialog';
import { hrefOf } from '../../route';
import { useStore } from '../../store-context';
import { saveBackup } from './data-section';
import { Section } from './section';
import styles from './settings-screen.module.css';

const WORD = 'erase';

export function EraseSection() {
  const store = useStore();
  const [isAsking, setAsking] = useState(false);
  const [typed, setTyped] = useState('');
  const [failure, setFailure] = useState<string | null>(null);
  const wordId = useId();
  const isMeant = typed.trim().toLowerCase() === WORD;

  const erase = async () => {
    if (!isMeant) return;
    try {
      await store.wipe();
      // Begins anew, so that nothing of the old is left in the page either.
      location.replace(hrefOf('start'));
      location.reload();
    } catch (error) {
      setFailure(error instanceof Error ? error.message : 'It could not be erased.');
    }
  };
  const close = () => {
    setAsking(false);
    setTyped('');
  };

  return (
    <Section title="Erase">
      <p>
        Everything that the app keeps on this device: the record, the programme, these settings.
      </p>
      <Button onClick={() => setAsking(true)}>Erase everything…</Button>
      <Dialog title="Erase everything on this device?" isOpen={isAsking} onClose={close}>
        <div class={styles.dialog}>
          <p>Without a backup it cannot be brought back.</p>
          <Button onClick={() => void saveBackup(store)}>Save a backup first</Button>
          <label for={wordId}>To erase, type “{WORD}”.</label>
          <input
            id={wordId}
            type="text"
            autocomplete="off"
            autocapitalize="none"
            value={typed}
            onInput={(event) => setTyped(event.currentTarget.value)}
          />
          {failure !== null && <p role="alert">{failure}</p>}
        </div>
        <DialogActions>
          <Button onClick={close}>Keep everything</Button>
          <Button kind="main" disabled={!isMeant} onClick={() => void erase()}>
            Erase
          </Button>
        </DialogActions>
      </Dialog>
    </Section>
  );
}
