/** Which note and hands, then the chords of the round with how they stand; and what has been done in this lesson. */
import { useState } from 'preact/hooks';
import { chanceEven } from '../../../shared/learning/prediction';
import { FLUENCIES } from '../../../shared/log/events';
import { type Programme, targetFor } from '../../../shared/log/programme';
import {
  type Item,
  itemOf,
  roundItems,
  type StartingNote,
  type Way,
  WAYS,
} from '../../../shared/music/deck';
import { markOf } from '../../../shared/music/tempo';
import { isOnTheWay } from '../../../shared/planning/candidates';
import { frontOf } from '../../../shared/planning/map';
import { notesOf } from '../../../shared/planning/student';
import { shortDay } from '../../parts/dates';
import { Figures } from '../../parts/figures/figures';
import { Page } from '../../parts/page/page';
import { percent } from '../../parts/percent-text';
import { Remarks } from '../../parts/remarks/remarks';
import { SHORT_WAY } from '../../parts/short-way';
import { chordText, noteText, wayText } from '../../parts/words';
import { hrefOf } from '../../route';
import { useStore } from '../../store-context';
import { Chips } from './chips';
import styles from './lesson.module.css';
import { lastRated } from './last-rated';

export function Overview({ programme }: { readonly programme: Programme }) {
  const store = useStore();
  const student = store.student.value;
  const today = store.today.value;
  const begun = lastRated(store.todaysRuns.value);
  const [note, setNote] = useState<StartingNote>(begun?.note ?? notesOf(programme)[0]!);
  const [way, setWay] = useState<Way>(begun?.way ?? frontOf(student, programme));
  const round = roundItems(note, way);
  const asked = round.filter((item) => isOnTheWay(programme, item));
  const others = round.filter((item) => !asked.includes(item));
  const ofToday = student.remarks.filter((remark) => remark.day === today && remark.about === null);
  return (
    <Page
      title="Lesson"
      note="What is rated here is marked as the teacher’s. Everything can be undone."
      lit={[note]}
    >
      <div class={styles.choices}>
        <Chips
          label="Starting note"
          options={notesOf(programme).map((one) => [one, noteText(one)])}
          value={note}
          onChange={setNote}
        />
        <Chips
          label="Hands and octaves"
          options={WAYS.map((one) => [one, SHORT_WAY[one].join(' '), wayText(one)])}
          value={way}
          onChange={setWay}
        />
      </div>
      <Lines items={asked} programme={programme} />
      {others.length > 0 && (
        <details class={styles.others} open={asked.length === 0}>
          <summary>
            Not asked for: {others.length === 1 ? 'one chord' : `${others.length} chords`}
          </summary>
          <Lines items={others} programme={programme} />
        </details>
      )}
      <RatedToday programme={programme} />
      <section class={styles.section}>
        <h2>About the student</h2>
        <Remarks about={null} remarks={ofToday} by="teacher" />
      </section>
    </Page>
  );
}

interface LinesProps {
  readonly items: readonly Item[];
  readonly programme: Programme;
}

function Lines({ items, programme }: LinesProps) {
  return (
    <ol>
      {items.map((item) => (
        <Line key={item.id} item={item} programme={programme} />
      ))}
    </ol>
  );
}

function Line({ item, programme }: { readonly item: Item; readonly programme: Programme }) {
  const store = useStore();
  const { learner, lastRuns, aside, wishes } = store.student.value;
  const last = lastRuns.get(item.id);
  const chance = chanceEven(learner, item, targetFor(programme, item), store.today.value);
  const state = aside.has(item.id) ? 'set aside' : wishes.has(item.id) ? 'asked for' : null;
  return (
    <li>
      <a class={styles.line} href={hrefOf('lesson', item.id)}>
        <span class={styles.name}>
          {chordText(item.note, item.chord).title} <Figures chord={item.chord} />
        </span>
        <span class={styles.soft}>
          {last === undefined
            ? 'not played yet'
            : `${FLUENCIES[last.fluency]} at ${markOf(last.tempo, programme.grouping)}, ${shortDay(last.day)}`}
          {state !== null && `; ${state}`}
        </span>
        <span class={styles.chance}>
          {percent(chance)}
          <span class="spoken"> per cent</span>
        </span>
      </a>
    </li>
  );
}

function RatedToday({ programme }: { readonly programme: Programme }) {
  const rated = useStore().todaysRuns.value.filter(({ judge }) => judge === 'teacher');
  if (rated.length === 0) return null;
  return (
    <section class={styles.section}>
      <h2>Rated today</h2>
      <ul>
        {rated.toReversed().map(({ id, item, fluency, tempo }) => {
          const { note, chord, way } = itemOf(item);
          return (
            <li key={id}>
              <a class="music" href={hrefOf('lesson', item)}>
                {chordText(note, chord).title}
              </a>{' '}
              <span class={styles.soft}>
                {wayText(way)}: {FLUENCIES[fluency]} at {markOf(tempo, programme.grouping)}
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
