/** The first screen: what is to be practised today, why, and one button to begin. */
import { useEffect } from 'preact/hooks';
import type { Day } from '../../../shared/log/events';
import { DRILL_SECONDS } from '../../../shared/planning/drills/offer';
import type { Student } from '../../../shared/planning/student';
import { type DayPlan, planDay } from '../../../shared/planning/today';
import { Button, ButtonLink } from '../../parts/button/button';
import { dayText, minutesText } from '../../parts/dates';
import { Page } from '../../parts/page/page';
import { Stepper } from '../../parts/stepper/stepper';
import { hrefOf, replace } from '../../route';
import { useStore } from '../../store-context';
import { type DayList, dayListOf, type ListedDrill } from '../../day/day-list';
import { DrillRow } from './drill-row';
import { EntryRow } from './entry-row';
import { SoreToday } from './sore-today';
import { isRestDay } from '../../day/rest';
import { whatStandsOut } from './stands-out';
import styles from './today.module.css';

const SHORTEST = 5;
const LONGEST = 120;

export function TodayScreen() {
  const store = useStore();
  const list = dayListOf(store);
  const plan = list.plan.value;
  const isNew = store.status.value === 'ready' && store.student.value.programme === null;
  useEffect(() => {
    if (isNew) replace('start');
  }, [isNew]);
  const lit = plan?.entries.map(({ note }) => note) ?? [];
  return (
    <Page title={dayText(store.today.value)} lit={lit} note={plan && <Amount list={list} />}>
      {plan !== null && <Plan plan={plan} list={list} />}
      {store.status.value === 'reading' && <p role="status">Reading a long record…</p>}
    </Page>
  );
}

function Amount({ list }: { readonly list: DayList }) {
  const open = list.entries.value.filter(({ state }) => state === 'open');
  const drills = list.drills.value.filter(({ state }) => state === 'open');
  const ofEntries = open.reduce((sum, { entry }) => sum + entry.seconds, 0);
  const seconds = ofEntries + drills.length * DRILL_SECONDS;
  if (open.length === 0) return <>Nothing left on the list.</>;
  const hasBegun = list.entries.value.some(({ state }) => state === 'done');
  return (
    <>
      {minutesText(seconds)} {hasBegun ? 'left' : 'in all'}
    </>
  );
}

function Plan({ plan, list }: { readonly plan: DayPlan; readonly list: DayList }) {
  const store = useStore();
  const { programme } = store.student.value;
  const entries = list.entries.value;
  const isRest = list.sore.value === null && isRestDay(store.student.value, plan.day);
  return (
    <div data-ready="today">
      <Remarks
        plan={plan}
        student={list.basis.value}
        isRest={isRest}
        isOver={entries.length > 0 && list.next.value === null}
      />
      {entries.length === 0 ? (
        <Nothing list={list} day={plan.day} />
      ) : (
        <ol class={styles.list}>
          {list.drills.value.map((listed) => (
            <DrillRow
              key={listed.offer.drill}
              listed={listed}
              isCurrent={listed === nextDrill(list)}
              onPutBack={() => list.putBack(listed.offer.drill)}
            />
          ))}
          {entries.map((listed, i) => (
            <EntryRow
              key={listed.entry.key}
              listed={listed}
              previous={entries[i - 1]?.entry ?? null}
              grouping={programme!.grouping}
              isCurrent={nextDrill(list) === null && listed === list.next.value}
              onPutBack={() => list.putBack(listed.entry.key)}
            />
          ))}
        </ol>
      )}
      <div class={styles.bar}>
        <Stepper
          label="Minutes today"
          value={list.minutes.value}
          min={SHORTEST}
          max={LONGEST}
          step={5}
          onChange={list.setMinutes}
        />
        <Begin list={list} isRest={isRest} />
      </div>
      <SoreToday list={list} />
    </div>
  );
}

/** Why the list is empty, and what can be done about it. */
function Nothing({ list, day }: { readonly list: DayList; readonly day: Day }) {
  const hasPlayed = useStore().todaysRuns.value.length > 0;
  const { entries } = planDay(list.basis.value, day, LONGEST, list.sitting.value);
  if (entries.length > 0) {
    return (
      <p>
        {list.minutes.value} minutes are too few for a round at today’s tempos. Take a little more
        time.
      </p>
    );
  }
  if (hasPlayed) return <p>All that is open has been played often enough for today.</p>;
  return (
    <p>
      All that could come now has been set aside. Take an arpeggio back on its page:{' '}
      <a href={hrefOf('map')}>see the map</a>.
    </p>
  );
}

/** The first that is still to be played; drills come before the rounds. */
const nextDrill = (list: DayList): ListedDrill | null =>
  list.drills.value.find(({ state }) => state === 'open') ?? null;

function Begin({ list, isRest }: { readonly list: DayList; readonly isRest: boolean }) {
  const drill = nextDrill(list);
  const href = drill === null ? hrefOf('play') : hrefOf('drill', drill.offer.drill);
  if (list.session.value !== null) {
    return (
      <ButtonLink kind="main" size="stand" href={hrefOf('play')}>
        Go on where you stopped
      </ButtonLink>
    );
  }
  if (list.next.value === null) {
    const hasPlayed = list.entries.value.some(({ state }) => state === 'done');
    if (!hasPlayed) return null;
    return (
      <>
        <ButtonLink size="stand" href={hrefOf('play')}>
          What moved today
        </ButtonLink>
        {list.sore.value === null && (
          <Button kind="quiet" onClick={list.makeAnother}>
            Another list for today
          </Button>
        )}
      </>
    );
  }
  const hasBegun = [...list.entries.value, ...list.drills.value].some(
    ({ state }) => state === 'done',
  );
  return (
    <ButtonLink kind={isRest ? 'plain' : 'main'} size="stand" href={href}>
      {isRest ? 'Play all the same' : hasBegun ? 'Go on' : 'Begin'}
    </ButtonLink>
  );
}

interface RemarksProps {
  readonly plan: DayPlan;
  /** What the plan rests on. */
  readonly student: Student;
  readonly isRest: boolean;
  /** Nothing is left on the list: the words for a first day have had their time. */
  readonly isOver: boolean;
}

function Remarks({ plan, student, isRest, isOver }: RemarksProps) {
  const store = useStore();
  const isNew = student.work.size === 0;
  const sentences = isNew && isOver ? [] : whatStandsOut(student, plan);
  const unread = store.unread.value.length;
  return (
    <div class={styles.remarks}>
      {isRest && (
        <p>
          The week has had its days of practice. A day of rest belongs to the programme: hands learn
          in it too.
        </p>
      )}
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {isNew && !isOver && (
        <p>
          Do you play some of it already? <a href={hrefOf('placement')}>Find out where you are</a>:
          ten runs, about six minutes.
        </p>
      )}
      {unread > 0 && (
        <p>
          {unread === 1 ? 'One record' : `${unread} records`} could not be read and were set aside:
          see <a href={hrefOf('settings')}>Settings</a>.
        </p>
      )}
    </div>
  );
}
