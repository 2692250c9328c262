/** Hands the record of the student who is shown to somebody else: all of it, or what is new since the last time. */
import { useContext, useEffect, useId, useState } from 'preact/hooks';
import { studentFileName } from '../../../shared/formats/backup';
import type { StudentId } from '../../../shared/log/events';
import { Button } from '../../parts/button/button';
import { dateText } from '../../parts/dates';
import { giveFile } from '../../parts/give-file';
import { say } from '../../parts/notice/notice';
import { StudentsContext, useStore } from '../../store-context';
import type { HandOver, Mark, Students } from '../../store/store';
import { Section } from './section';
import styles from './students-section.module.css';

/** Characters of what a receiver is called. */
const LONGEST_RECEIVER = 80;

export function HandOverSection() {
  const students = useContext(StudentsContext);
  const shown = students?.shown.value ?? null;
  if (students === null || shown === null) return null;
  return (
    <Section title="Give the record to somebody">
      <p>
        A teacher, a parent, another device: whoever takes the file in has the same record, and the
        one here stays. Next time it is enough to give what is new.
      </p>
      <Receivers key={shown} students={students} student={shown} />
    </Section>
  );
}

interface ReceiversProps {
  readonly students: Students;
  readonly student: StudentId;
}

function Receivers({ students, student }: ReceiversProps) {
  const store = useStore();
  const id = useId();
  const [known, setKnown] = useState<readonly HandOver[]>([]);
  const [typed, setTyped] = useState('');
  const read = () => {
    students.handOvers(student).then(setKnown, () => setKnown([]));
  };
  useEffect(read, [students, student]);

  const give = async (receiver: string, since: Mark | null) => {
    try {
      const { file, events, mark } = await students.fileOf(student, since);
      if (mark === null) return say('Nothing is new since then.');
      const { name } = store.student.peek();
      const given = await giveFile(file, studentFileName(name, store.today.peek()));
      if (given === 'given up') return;
      await students.noteHandOver(student, receiver, mark);
      setTyped('');
      read();
      const records = events === 1 ? 'one record' : `${events} records`;
      say(
        `A file with ${records} for ${receiver}${given === 'shared' ? '' : ': in your downloads'}.`,
      );
    } catch (error) {
      say(error instanceof Error ? error.message : 'The file could not be made.');
    }
  };

  return (
    <>
      {known.length > 0 && (
        <ul class={styles.list}>
          {known.map(({ receiver, day, mark }) => (
            <li key={receiver} class={styles.row}>
              <span class={styles.name}>
                {receiver} <span class="soft">last on {dateText(day)}</span>
              </span>
              <Button onClick={() => void give(receiver, mark)}>
                Give what is new <span class="spoken">to {receiver}</span>
              </Button>
            </li>
          ))}
        </ul>
      )}
      <form
        class={styles.form}
        onSubmit={(event) => {
          event.preventDefault();
          void give(typed.trim(), null);
        }}
      >
        <label for={id}>
          To whom, as you call them
          <input
            id={id}
            type="text"
            autocomplete="off"
            maxLength={LONGEST_RECEIVER}
            value={typed}
            onInput={(event) => setTyped(event.currentTarget.value)}
          />
        </label>
        <Button type="submit" disabled={typed.trim() === ''}>
          Give the whole record
        </Button>
      </form>
    </>
  );
}
