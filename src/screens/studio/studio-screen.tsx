/** All students of the device at a glance. There is nothing of it until there is a second one. */
import { useContext, useState } from 'preact/hooks';
import { studioCsv } from '../../../shared/formats/studio-csv';
import { Button, ButtonLink } from '../../parts/button/button';
import { dateText } from '../../parts/dates';
import { download } from '../../parts/download';
import { say } from '../../parts/notice/notice';
import { Page } from '../../parts/page/page';
import { studentText } from '../../parts/words';
import { go, hrefOf } from '../../route';
import { StudentsContext, useStore } from '../../store-context';
import type { Listed, Students } from '../../store/store';
import { memoryOf, useReading } from './memory';
import { found, inOrder, type Line, turned } from './order';
import { type Open, StudentTable } from './student-table';
import styles from './studio.module.css';
import { waitingTexts } from './words';

/** Students that are seen without searching. */
const FEW = 10;

export function StudioScreen() {
  const students = useContext(StudentsContext);
  const all = students?.listed.value ?? [];
  if (students === null || all.length < 2) return <Alone />;
  return <Studio students={students} all={all} />;
}

const Alone = () => (
  <Page title="All students" note="There is one student here, so there is nothing to compare.">
    <ButtonLink href={hrefOf('settings')}>Settings</ButtonLink>
  </Page>
);

interface StudioProps {
  readonly students: Students;
  readonly all: readonly Listed[];
}

function Studio({ students, all }: StudioProps) {
  const store = useStore();
  const today = store.today.value;
  const [typed, setTyped] = useState('');
  const present = all.filter(({ isArchived }) => !isArchived);
  const archived = all.filter(({ isArchived }) => isArchived);
  const { order, overviews } = memoryOf(students);
  const failure = useReading(
    students,
    present.map(({ id }) => id),
  );
  const lines = inOrder(
    present.map(({ id, name }): Line => {
      const overview = overviews.value.get(id) ?? null;
      const waiting = overview === null ? [] : waitingTexts(overview, today);
      return { student: id, name: studentText(name), overview, waiting };
    }),
    order.value,
  );
  const read = lines.filter(({ overview }) => overview !== null).length;
  const shown = found(lines, typed);

  const open: Open = ({ student }, screen) => {
    students.show(student).then(
      () => go(screen),
      (error: unknown) => {
        say(error instanceof Error ? error.message : 'The student could not be shown.');
      },
    );
  };
  const save = () => {
    const rows = lines.map(({ name, overview, waiting }) => ({
      name,
      figures: overview!.figures,
      waiting: waiting.join('; '),
    }));
    const table = studioCsv(rows, today);
    download(new Blob([table], { type: 'text/csv' }), `arpeggiary-students-${today}.csv`);
    say('The table is in your downloads.');
  };

  return (
    <Page title="All students" note={dateText(today)} isWide>
      <div class={styles.tools} data-screen-only>
        {lines.length > FEW && (
          <label class={styles.search}>
            Find a student
            <input
              type="text"
              autocomplete="off"
              value={typed}
              onInput={(event) => setTyped(event.currentTarget.value)}
            />
          </label>
        )}
        <Button disabled={read < lines.length} onClick={save}>
          Save as a table (CSV)
        </Button>
        <Button onClick={() => print()}>Print</Button>
        <p role="status" class={styles.status}>
          {read < lines.length && failure === null && `Reading: ${read} of ${lines.length}`}
        </p>
      </div>
      {failure !== null && <p role="alert">{failure}</p>}
      {shown.length === 0 ? (
        <p>No student is called that.</p>
      ) : (
        <StudentTable
          lines={shown}
          order={order.value}
          today={today}
          onOrder={(column) => {
            order.value = turned(order.value, column);
          }}
          onOpen={open}
        />
      )}
      <p class={styles.note}>
        Ready: the mean of the estimated probabilities, in per cent, that an item of the programme
        comes out at least even at its target tempo; on the date, if nothing is played until then.
        Days and minutes of practice are those of the last four weeks.
      </p>
      {archived.length > 0 && <Archived students={students} archived={archived} />}
    </Page>
  );
}

interface ArchivedProps {
  readonly students: Students;
  readonly archived: readonly Listed[];
}

function Archived({ students, archived }: ArchivedProps) {
  const takeBack = ({ id }: Listed) => {
    students.archive(id, false).catch((error: unknown) => {
      say(error instanceof Error ? error.message : 'The student could not be taken back.');
    });
  };
  return (
    <details class={styles.archived} data-screen-only>
      <summary>Archived: {archived.length}</summary>
      <ul>
        {archived.map((listed) => (
          <li key={listed.id} class={styles.away}>
            <span class="music">{studentText(listed.name)}</span>
            <Button kind="quiet" onClick={() => takeBack(listed)}>
              Take back <span class="spoken">{studentText(listed.name)}</span>
            </Button>
          </li>
        ))}
      </ul>
    </details>
  );
}
