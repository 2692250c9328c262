/** Whose page it is, once the device has several students: by name, and another one by one tap. */
import { useContext } from 'preact/hooks';
import type { StudentId } from '../../../shared/log/events';
import { go, hrefOf, route } from '../../route';
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
  const isOfAll = route.value.screen === 'studio';
  const shown = students.shown.value;
  const present = all.filter(({ isArchived, id }) => !isArchived || id === shown);
  const choose = (id: StudentId) => {
    students.show(id).then(
      // The page of all is nobody's.
      () => isOfAll && go('today'),
      (error: unknown) => {
        say(error instanceof Error ? error.message : 'The other student could not be shown.');
      },
    );
  };
  const Names = present.length > MOST_SIDE_BY_SIDE ? NameList : NameButtons;
  return (
    <div class={styles.whose}>
      <Names present={present} shown={isOfAll ? null : shown} onChoose={choose} />
      <a class={styles.all} href={hrefOf('studio')} aria-current={isOfAll ? 'page' : undefined}>
        All students
      </a>
    </div>
  );
}

/**
 * Only the name, where nothing is to be tapped: on the music stand, and on paper. Nothing while the device has one
 * student.
 */
export function WhoseName({ isForPaper = false }: { readonly isForPaper?: boolean }) {
  const students = useContext(StudentsContext);
  const all = students?.listed.value ?? [];
  const shown = all.find(({ id }) => id === students?.shown.value);
  if (all.length < 2 || shown === undefined) return null;
  return <p class={isForPaper ? styles.onPaper : styles.onStand}>{studentText(shown.name)}</p>;
}

interface NamesProps {
  readonly present: readonly { readonly id: StudentId; readonly name: string | null }[];
  /** Null where the page is about all of them. */
  readonly shown: StudentId | null;
  readonly onChoose: (id: StudentId) => void;
}

const NameButtons = ({ present, shown, onChoose }: NamesProps) => (
  <div role="group" aria-label="Student" class={styles.names}>
    {present.map(({ id, name }) => (
      <button
        key={id}
        type="button"
        class={styles.name}
        aria-pressed={id === shown}
        onClick={() => onChoose(id)}
      >
        {studentText(name)}
      </button>
    ))}
  </div>
);

const NameList = ({ present, shown, onChoose }: NamesProps) => (
  <label class={styles.list}>
    <span class="spoken">Student</span>
    <select value={shown ?? ''} onChange={(event) => onChoose(event.currentTarget.value)}>
      {shown === null && (
        <option value="" disabled>
          One student…
        </option>
      )}
      {present.map(({ id, name }) => (
        <option key={id} value={id}>
          {studentText(name)}
        </option>
      ))}
    </select>
  </label>
);
