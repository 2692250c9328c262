import { useState } from 'preact/hooks';
import { LONGEST_NAME } from '../../../shared/formats/event';
import { Button } from '../../parts/button/button';
import { Dialog, DialogActions } from '../../parts/dialog/dialog';
import type { Students } from '../../store/store';
import styles from './students-section.module.css';

interface AddStudentProps {
  readonly students: Students;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly onAdded: () => void;
}

/** Asks for the name of another student, with whom names come to stand at the head of every page. */
export function AddStudent({ students, isOpen, onClose, onAdded }: AddStudentProps) {
  const [name, setName] = useState('');
  const [failure, setFailure] = useState<string | null>(null);
  const isFirstOther = students.listed.value.length === 1;
  const isNameless = isFirstOther && !students.listed.value[0]!.name;
  const add = async (event: Event) => {
    event.preventDefault();
    try {
      await students.add(name.trim());
      onAdded();
    } catch (error) {
      setFailure(error instanceof Error ? error.message : 'The student could not be added.');
    }
  };
  return (
    <Dialog title="Add a student" isOpen={isOpen} onClose={onClose}>
      <form class={styles.form} onSubmit={(event) => void add(event)}>
        {isFirstOther && (
          <p>
            Each student has a record, a programme and a list of their own. From then on every page
            says whose it is.
          </p>
        )}
        {isNameless && <p>The student who is here has no name yet: give that one a name too.</p>}
        <label>
          Name of the new student
          <input
            type="text"
            autocomplete="off"
            required
            maxLength={LONGEST_NAME}
            value={name}
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        {failure !== null && <p role="alert">{failure}</p>}
        <DialogActions>
          <Button onClick={onClose}>Not now</Button>
          <Button kind="main" type="submit" disabled={name.trim() === ''}>
            Add
          </Button>
        </DialogActions>
      </form>
    </Dialog>
  );
}
