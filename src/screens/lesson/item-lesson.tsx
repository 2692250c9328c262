/** One item in the lesson: five big buttons rate the run that has just been heard. */
import { useState } from 'preact/hooks';
import { workingTempo } from '../../../shared/learning/prediction';
import { addDays } from '../../../shared/log/day';
import { FLUENCIES, type Fluency, type RunEvent } from '../../../shared/log/events';
import type { Programme } from '../../../shared/log/programme';
import { type Item, roundItems } from '../../../shared/music/deck';
import { markOf, playableTempo } from '../../../shared/music/tempo';
import { isOnTheWay } from '../../../shared/planning/candidates';
import type { Wish } from '../../../shared/planning/student';
import { Button, ButtonLink } from '../../parts/button/button';
import { useDoublePress } from '../../parts/double-press';
import { Page } from '../../parts/page/page';
import { Remarks } from '../../parts/remarks/remarks';
import { TempoStepper } from '../../parts/stepper/tempo-stepper';
import { type Regretted, TakeBack } from '../../parts/take-back';
import { chordText, wayText } from '../../parts/words';
import { hrefOf } from '../../route';
import { useStore } from '../../store-context';
import { act } from './act';
import styles from './lesson.module.css';

interface ItemLessonProps {
  readonly item: Item;
  readonly programme: Programme;
}

export function ItemLesson({ item, programme }: ItemLessonProps) {
  const store = useStore();
  const student = store.student.value;
  const { grouping } = programme;
  const [tempo, setTempo] = useState(() => {
    const last = student.lastRuns.get(item.id);
    const today = store.today.peek();
    return last?.tempo ?? playableTempo(workingTempo(student.learner, item, today), grouping);
  });
  const [pedal, setPedal] = useState(false);
  const isDouble = useDoublePress();
  const title = chordText(item.note, item.chord).title;
  const rate = async (event: Event, fluency: Fluency) => {
    if (isDouble(event)) return;
    await act(store, {
      body: { kind: 'run', item: item.id, tempo, fluency, pedal, judge: 'teacher', entry: null },
      said: `Rated ${FLUENCIES[fluency]} at ${markOf(tempo, grouping)}.`,
    });
  };
  return (
    <Page
      title={title}
      note={`Lesson: ${wayText(item.way)}${isOnTheWay(programme, item) ? '' : ', not asked for'}`}
      lit={[item.note]}
    >
      <div class={styles.settings}>
        <TempoStepper
          label={`Tempo, ${grouping} notes a beat`}
          tempo={tempo}
          grouping={grouping}
          size="stand"
          onChange={setTempo}
        />
        <label class={styles.check}>
          <input
            type="checkbox"
            checked={pedal}
            onChange={(event) => setPedal(event.currentTarget.checked)}
          />
          with pedal
        </label>
      </div>
      <div class={styles.marks} role="group" aria-label="How did it go?">
        {FLUENCIES.map((word, fluency) => (
          <Button key={word} size="stand" onClick={(event) => void rate(event, fluency as Fluency)}>
            {word}
          </Button>
        ))}
      </div>
      <Rated item={item} programme={programme} />
      <Wishes item={item} />
      <section class={styles.section}>
        <h2>Remarks</h2>
        <Remarks
          about={item.id}
          remarks={student.remarks.filter(({ about }) => about === item.id)}
          by="teacher"
        />
      </section>
      <Onward item={item} programme={programme} />
    </Page>
  );
}

/** Runs of this item that the teacher has rated today. */
function Rated({ item, programme }: ItemLessonProps) {
  const [regretted, setRegretted] = useState<Regretted | null>(null);
  const isHere = (run: RunEvent) => run.item === item.id && run.judge === 'teacher';
  const runs = useStore().todaysRuns.value.filter(isHere);
  return (
    <>
      <ul class={styles.rated}>
        {runs.map(({ id, fluency, tempo }) => {
          const which = `${FLUENCIES[fluency]} at ${markOf(tempo, programme.grouping)}`;
          return (
            <li key={id} class={styles.run}>
              {which}
              <Button
                kind="quiet"
                aria-label={`Take back: ${which}`}
                onClick={() => setRegretted({ id, what: 'this rating', which })}
              >
                Take back
              </Button>
            </li>
          );
        })}
      </ul>
      <TakeBack regretted={regretted} onClose={() => setRegretted(null)} />
    </>
  );
}

function Wishes({ item }: { readonly item: Item }) {
  const store = useStore();
  const { aside, wishes } = store.student.value;
  const isAside = aside.has(item.id);
  const wish = wishes.get(item.id);
  const ask = () =>
    act(store, {
      body: { kind: 'wish', item: item.id, from: addDays(store.today.value, 1) },
      said: 'Asked for tomorrow.',
    });
  const unask = ({ id, from }: Wish) =>
    act(store, {
      body: { kind: 'void', events: [id] },
      said: 'It is no longer asked for.',
      back: { kind: 'wish', item: item.id, from },
    });
  const setAside = (isNow: boolean) =>
    act(store, {
      body: { kind: 'aside', item: item.id, aside: isNow },
      said: isNow ? 'Set aside: it does not come up on the list.' : 'Taken back on the list.',
    });
  return (
    <div class={styles.buttons}>
      {wish === undefined ? (
        <Button size="stand" disabled={isAside} onClick={() => void ask()}>
          Ask for it tomorrow
        </Button>
      ) : (
        <Button size="stand" onClick={() => void unask(wish)}>
          Asked for: take back
        </Button>
      )}
      <Button size="stand" onClick={() => void setAside(!isAside)}>
        {isAside ? 'Take it back on the list' : 'Set it aside'}
      </Button>
    </div>
  );
}

/** Chord after chord as a round is played, past those that the programme does not ask for. */
function Onward({ item, programme }: ItemLessonProps) {
  const round = roundItems(item.note, item.way);
  const isAsked = isOnTheWay(programme, item);
  const next = round
    .slice(round.indexOf(item) + 1)
    .find((other) => !isAsked || isOnTheWay(programme, other));
  return (
    <nav class={styles.buttons} aria-label="Go on">
      {next && (
        <ButtonLink kind="main" size="stand" href={hrefOf('lesson', next.id)}>
          Next: {chordText(next.note, next.chord).name}
        </ButtonLink>
      )}
      <ButtonLink size="stand" href={hrefOf('lesson')}>
        All chords
      </ButtonLink>
    </nav>
  );
}
