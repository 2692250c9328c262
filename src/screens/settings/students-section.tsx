/** Who is on this device. With one student it is a name and a quiet way to add another. */
import { useContext, useState } from 'preact/hooks';
import { Button } from '../../parts/button/button';
import { say } from '../../parts/notice/notice';
import { NameField } from '../../parts/name-field/name-field';
import { studentText } from '../../parts/words';
import { go, hrefOf } from '../../route';
import { StudentsContext } from '../../store-context';
import type { Listed, Students } from '../../store/store';
import { AddStudent } from './add-student';
import { Section } from './section';
import { StudentDialog } from './student-dialog';
import styles from './students-section.module.css';

export function StudentsSection() {
  const students = useContext(StudentsContext);
  const [isAdding, setAdding] = useState(false);
  const all = students?.listed.value ?? [];
  return (
    <Section title={all.length > 1 ? 'Students' : 'Student'}>
      {all.length < 2 && <NameField />}
      {students !== null && all.length > 1 && <StudentList students={students} all={all} />}
      {students !== null && all.length > 0 && (
        <>
          <Button kind={all.length > 1 ? 'plain' : 'quiet'} onClick={() => setAdding(true)}>
            Add {all.length > 1 ? 'a' : 'another'} student
          </Button>
          <AddStudent
            students={students}
            isOpen={isAdding}
            onClose={() => setAdding(false)}
            onAdded={() => go('start')}
          />
        </>
      )}
    </Section>
  );
}

interface StudentListProps {
  readonly students: Students;
  readonly all: readonly Listed[];
}

function StudentList({ students, all }: StudentListProps) {
  const [chosen, setChosen] = useState<Listed | null>(null);
  return (
    <>
      <p>
        <a href={hrefOf('studio')}>All students at a glance</a>
      </p>
      <ul class={styles.list}>
        {all.map((listed) => (
          <StudentRow
            key={listed.id}
            listed={listed}
            students={students}
            onChange={() => setChosen(listed)}
          />
        ))}
      </ul>
      <StudentDialog students={students} listed={chosen} onClose={() => setChosen(null)} />
    </>
  );
}

interface StudentRowProps {
  readonly listed: Listed;
  readonly students: Students;
  readonly onChange: () => void;
}

function StudentRow({ listed, students, onChange }: StudentRowProps) {
  const { id, isArchived } = listed;
  const name = studentText(listed.name);
  const isShown = students.shown.value === id;
  const show = () => {
    students.show(id).catch((error: unknown) => {
      say(error instanceof Error ? error.message : 'The student could not be shown.');
    });
  };
  return (
    <li class={styles.row}>
      <span class={styles.name}>
        {name}
        {isArchived && <span class="soft"> (archived)</span>}
      </span>
      {isShown ? (
        <span class="soft">shown</span>
      ) : (
        <Button onClick={show}>
          {isArchived ? 'Take back' : 'Show'} <span class="spoken">{name}</span>
        </Button>
      )}
      <Button kind="quiet" onClick={onChange}>
        More <span class="spoken">about {name}</span>
      </Button>
    </li>
  );
}
