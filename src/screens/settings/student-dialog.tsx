/** What is rarely done with a student: another name, away and out of sight, away for good. */
import { useState } from 'preact/hooks';
import { studentFileName } from '../../../shared/formats/backup';
import { LONGEST_NAME } from '../../../shared/formats/event';
import { Button } from '../../parts/button/button';
import { Dialog, DialogActions } from '../../parts/dialog/dialog';
import { giveFile } from '../../parts/give-file';
import { nameText } from '../../parts/words';
import { useStore } from '../../store-context';
import type { Listed, Students } from '../../store/store';
import styles from './students-section.module.css';

interface StudentDialogProps {
  readonly students: Students;
  /** Null: closed. */
  readonly listed: Listed | null;
  readonly onClose: () => void;
}

type Page = 'all' | 'rename' | 'remove';

export function StudentDialog({ students, listed, onClose }: StudentDialogProps) {
  const [page, setPage] = useState<Page>('all');
  const close = () => {
    setPage('all');
    onClose();
  };
  const name = nameText(listed?.name ?? null);
  const titles = {
    all: name,
    rename: `Rename ${name}`,
    remove: `Remove ${name} from this device?`,
  };
  return (
    <Dialog title={titles[page]} isOpen={listed !== null} onClose={close}>
      {listed !== null && page === 'all' && (
        <Changes students={students} listed={listed} onClose={close} onTurn={setPage} />
      )}
      {listed !== null && page === 'rename' && (
        <Renaming students={students} listed={listed} onClose={close} />
      )}
      {listed !== null && page === 'remove' && (
        <Removal students={students} listed={listed} onClose={close} />
      )}
    </Dialog>
  );
}

interface PartProps {
  readonly students: Students;
  readonly listed: Listed;
  readonly onClose: () => void;
}

/** Does something and closes, or says why it could not be done. */
function useAttempt(onClose: () => void) {
  const [failure, setFailure] = useState<string | null>(null);
  const attempt = async (work: Promise<void>) => {
    try {
      await work;
      onClose();
    } catch (error) {
      setFailure(error instanceof Error ? error.message : 'This could not be done.');
    }
  };
  return { failure, attempt };
}

interface ChangesProps extends PartProps {
  readonly onTurn: (page: Page) => void;
}

function Changes({ students, listed, onClose, onTurn }: ChangesProps) {
  const { failure, attempt } = useAttempt(onClose);
  const { id, isArchived } = listed;
  const others = students.listed.value.filter((other) => other.id !== id && !other.isArchived);
  return (
    <div class={styles.form}>
      <Button onClick={() => onTurn('rename')}>Rename…</Button>
      <Button
        disabled={!isArchived && others.length === 0}
        onClick={() => void attempt(students.archive(id, !isArchived))}
      >
        {isArchived ? 'Take back' : 'Archive'}
      </Button>
      <p class="soft">Archived, a student stays on the device with all that is on record.</p>
      <Button onClick={() => onTurn('remove')}>Remove from this device…</Button>
      {failure !== null && <p role="alert">{failure}</p>}
      <DialogActions>
        <Button onClick={onClose}>Close</Button>
      </DialogActions>
    </div>
  );
}

function Renaming({ students, listed, onClose }: PartProps) {
  const { failure, attempt } = useAttempt(onClose);
  const [typed, setTyped] = useState(listed.name ?? '');
  const rename = (event: Event) => {
    event.preventDefault();
    void attempt(students.rename(listed.id, typed.trim()));
  };
  return (
    <form class={styles.form} onSubmit={rename}>
      <label>
        Name
        <input
          type="text"
          autocomplete="off"
          maxLength={LONGEST_NAME}
          value={typed}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      {failure !== null && <p role="alert">{failure}</p>}
      <DialogActions>
        <Button onClick={onClose}>Keep the name</Button>
        <Button kind="main" type="submit" disabled={typed.trim() === (listed.name ?? '')}>
          Save the name
        </Button>
      </DialogActions>
    </form>
  );
}

function Removal({ students, listed, onClose }: PartProps) {
  const store = useStore();
  const { failure, attempt } = useAttempt(onClose);
  const [isSaved, setSaved] = useState(false);
  const save = async () => {
    const { file } = await students.fileOf(listed.id, null);
    const given = await giveFile(file, studentFileName(listed.name, store.today.peek()));
    setSaved(given !== 'given up');
  };
  return (
    <div class={styles.form}>
      <p>
        The whole record goes from this device: runs, programme, remarks, fingerings. It can only be
        brought back from a file.
      </p>
      <Button onClick={() => void save()}>Save the record as a file first</Button>
      <p role="status">
        {isSaved && 'The file has been handed out. Open it to have it all again.'}
      </p>
      {failure !== null && <p role="alert">{failure}</p>}
      <DialogActions>
        <Button onClick={onClose}>Keep</Button>
        <Button kind="main" onClick={() => void attempt(students.remove(listed.id))}>
          Remove
        </Button>
      </DialogActions>
    </div>
  );
}
