/** Whose page it is, once the device has several students: by name, and another one by one tap. */
import { useContext } from 'preact/hooks';
import type { StudentId } from '../../../shared/log/events';
import { StudentsContext } from '../../store-context';
import { say } from '../notice/notice';
import { studentText } from '../words';
import styles from './whose.module.css';

/** As many names as stand side by side on a phone; more are in a list. */
const MOST_SIDE_BY_SIDE = 4;

export function Whose() {
  const students = useContext(StudentsContext);
  const all = students?.listed.value ?? [];
  if (students === null || all.length < 2) return null;
  const shown = students.shown.value;
  const present = all.filter(({ isArchived, id }) => !isArchived || id === shown);
  const show = (id: StudentId) => {
    students.show(id).catch((error: unknown) => {
      say(error instanceof Error ? error.message : 'The other student could not be shown.');
    });
  };
  if (present.length > MOST_SIDE_BY_SIDE) {
    return (
      <label class={styles.list}>
        <span class="spoken">Student</span>
        <select value={shown ?? ''} onChange={(event) => show(event.currentTarget.value)}>
          {present.map(({ id, name }) => (
            <option key={id} value={id}>
              {studentText(name)}
            </option>
          ))}
        </select>
      </label>
    );
  }
  return (
    <div role="group" aria-label="Student" class={styles.names}>
      {present.map(({ id, name }) => (
        <button
          key={id}
          type="button"
          class={styles.name}
          aria-pressed={id === shown}
          onClick={() => show(id)}
        >
          {studentText(name)}
        </button>
      ))}
    </div>
  );
}
