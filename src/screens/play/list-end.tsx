/** The end of the list: what moved today and what comes next. */
import { now } from '../../clock';
import { type Grouping, markOf } from '../../../shared/music/tempo';
import { ButtonLink } from '../../parts/button/button';
import { minutesText } from '../../parts/dates';
import { Page } from '../../parts/page/page';
import { noteText, wayText } from '../../parts/words';
import { hrefOf } from '../../route';
import { useStore } from '../../store-context';
import { dayListOf } from '../../day/day-list';
import { restAdvice } from '../../day/rest';
import styles from './list-end.module.css';
import { type Moved, movedBy, nearlyOpen, type Opened, openedBy, planTomorrow } from './moved';

export function ListEnd() {
  const store = useStore();
  const student = store.student.value;
  const before = store.dayStart.value;
  const runs = store.todaysRuns.value;
  const day = store.today.value;
  const { grouping } = student.programme!;
  const moved = movedBy(runs, before, student, day);
  const work = student.work.get(day);
  return (
    <Page
      title={title(runs.length)}
      lit={moved.map(({ note }) => note)}
      note={work && amount(work)}
    >
      {moved.length > 0 && <MovedTable moved={moved} grouping={grouping} />}
      <section class={styles.section}>
        <h2>What comes next</h2>
        {openedBy(before, student).map((opened) => (
          <p key={opened.stage}>{openedText(opened)}</p>
        ))}
        {nearlyOpen(runs, student).map((opened) => (
          <p key={opened.stage}>{nearlyText(opened)}</p>
        ))}
        <Tomorrow />
        {restAdvice(runs, now()) !== 'none' && (
          <p>Leave the keys alone for a while now: hands go on learning while they rest.</p>
        )}
      </section>
      <p class={styles.links}>
        <ButtonLink href={hrefOf('map')}>See the map</ButtonLink>
        <ButtonLink href={hrefOf('today')}>Back to the list</ButtonLink>
      </p>
      <p class="soft">
        Pain: stop. <a href={hrefOf('help')}>About care for the hands</a>
      </p>
    </Page>
  );
}

const title = (runs: number): string =>
  runs === 0 ? 'Nothing is left on the list' : 'The list is done';

const amount = ({ runs, seconds }: { readonly runs: number; readonly seconds: number }): string =>
  `${runs === 1 ? 'One arpeggio' : `${runs} arpeggios`}, ${minutesText(seconds)} of playing.`;

const chords = (count: number): string => (count === 1 ? 'one chord' : `${count} chords`);

const openedText = ({ stage, arpeggios }: Opened): string =>
  `Open from now on for ${chords(arpeggios)}: ${wayText(stage)}.`;

const nearlyText = ({ stage, arpeggios }: Opened): string =>
  `Even once more on another day, and the next stage opens for ${chords(arpeggios)}: ${wayText(stage)}.`;

interface MovedTableProps {
  readonly moved: readonly Moved[];
  readonly grouping: Grouping;
}

function MovedTable({ moved, grouping }: MovedTableProps) {
  return (
    <table class={styles.table}>
      <caption>Likely even at, as a metronome mark</caption>
      <thead>
        <tr>
          <th scope="col">From</th>
          <th scope="col">before</th>
          <th scope="col">now</th>
        </tr>
      </thead>
      <tbody>
        {moved.map(({ note, way, items, before, after }) => (
          <tr key={`${note} ${way}`}>
            <th scope="row">
              <span class={styles.what}>
                <span class={styles.note}>{noteText(note)}</span>
                <span>
                  {wayText(way)} <span class={styles.count}>{chords(items)}</span>
                </span>
              </span>
            </th>
            <td>{markOf(before, grouping)}</td>
            <td class={styles.now}>{markOf(after, grouping)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Tomorrow() {
  const store = useStore();
  const list = dayListOf(store);
  const plan = planTomorrow(store.student.value, store.today.value);
  const first = plan.entries[0];
  if (first === undefined || list.entries.value.some(({ state }) => state === 'open')) return null;
  const kind = first.kind === 'round' ? `a round of ${first.items.length}` : 'a single arpeggio';
  return (
    <p>
      Tomorrow’s list begins with {kind} from {noteText(first.note)}, {wayText(first.way)}.
    </p>
  );
}
