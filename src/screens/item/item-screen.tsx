/** All about one item: its notes, its reach, its runs over time. The address names it: "#/item/d.major-6.right.2". */
import { useEffect, useState } from 'preact/hooks';
import { chanceEven, reachOf } from '../../../shared/learning/prediction';
import { daysBetween } from '../../../shared/log/day';
import { FLUENCIES, type RunEvent } from '../../../shared/log/events';
import { type Programme, targetFor } from '../../../shared/log/programme';
import { type Item, itemAt, parseItemId, WAYS } from '../../../shared/music/deck';
import { markOf } from '../../../shared/music/tempo';
import { isOnTheWay } from '../../../shared/planning/candidates';
import { Button, ButtonLink } from '../../parts/button/button';
import { dateText } from '../../parts/dates';
import { itemScore, roundScore } from '../../parts/item-score';
import { say } from '../../parts/notice/notice';
import { Page } from '../../parts/page/page';
import { percent } from '../../parts/percent-text';
import { Mark } from '../../parts/stepper/beat-note';
import { chordText, noteText, wayText } from '../../parts/words';
import { hrefOf, type ScreenProps } from '../../route';
import { useStore } from '../../store-context';
import { NoProgramme } from '../../parts/no-programme';
import { SaveScore } from '../../parts/save-score/save-score';
import { WayList } from '../../parts/way-list/way-list';
import { FingeringSection } from './fingering-section';
import { HeardSection } from './heard-section';
import { ItemNotes } from './item-notes';
import { Remarks } from '../../parts/remarks/remarks';
import { RunChart } from './run-chart';
import { RunTable } from './run-table';
import { standingText } from './standing';
import styles from './item-screen.module.css';

export function ItemScreen({ argument }: ScreenProps) {
  const { programme } = useStore().student.value;
  const item = argument === null ? null : parseItemId(argument);
  if (item === null) {
    return (
      <Page title="No such arpeggio" note="The address names none of the 924 items.">
        <ButtonLink href={hrefOf('map')}>To the map</ButtonLink>
      </Page>
    );
  }
  if (programme === null) return <NoProgramme title={titleOf(item)} />;
  return <ItemPage key={item.id} item={item} programme={programme} />;
}

const titleOf = (item: Item): string => chordText(item.note, item.chord).title;

interface ItemProps {
  readonly item: Item;
  readonly programme: Programme;
}

function ItemPage({ item, programme }: ItemProps) {
  const store = useStore();
  const student = store.student.value;
  const today = store.today.value;
  const runs = useRuns(item);
  const target = targetFor(programme, item);
  const { grouping } = programme;
  const isAsked = programme.notes.includes(item.note) && isOnTheWay(programme, item);
  const reach = reachOf(student.learner, item, today);
  const chances = new Map(
    WAYS.map((way) => {
      const other = itemAt(item.arpeggioIndex, way);
      return [way, chanceEven(student.learner, other, targetFor(programme, other), today)];
    }),
  );
  return (
    <Page title={titleOf(item)} note={wayText(item.way)} lit={[item.note]}>
      <ItemNotes item={item} tempo={target} />
      <SaveScore
        what="these notes"
        scoreOf={() => itemScore(student, item, target)}
        fileName={item.id.replaceAll('.', '-')}
      />
      <SaveScore
        what={`the whole round from ${noteText(item.note)}`}
        scoreOf={() => roundScore(student, item, target)}
        fileName={`round-${item.note}-${item.way.replaceAll('.', '-')}`}
      />
      <FingeringSection item={item} />
      <section class={styles.section}>
        <h2>Reach</h2>
        <dl class={styles.facts}>
          <div>
            <dt>reach today</dt>
            <dd>
              <Mark tempo={reach.tempo} grouping={grouping} />
            </dd>
          </div>
          <div>
            <dt>asked</dt>
            <dd>
              {isAsked ? (
                <Mark tempo={target} grouping={grouping} />
              ) : (
                <span class={styles.unit}>not asked for</span>
              )}
            </dd>
          </div>
          <div>
            <dt>{isAsked ? 'chance there' : `chance at ${markOf(target, grouping)}`}</dt>
            <dd>
              {percent(chances.get(item.way)!)}
              <span class={styles.unit}> per cent</span>
            </dd>
          </div>
        </dl>
        <p>
          The reach is the tempo at which it comes out at least even as often as not; it lies
          probably between {markOf(reach.low, grouping)} and {markOf(reach.high, grouping)}.
        </p>
        <p class={styles.note}>
          <LastPlayed item={item} /> {standingText(student, programme, item)}
        </p>
        {runs.length > 0 && (
          <>
            <RunChart
              runs={runs}
              today={today}
              target={isAsked ? target : null}
              reach={reach}
              grouping={grouping}
            />
            <RunTable runs={runs} grouping={grouping} />
          </>
        )}
      </section>
      <HeardSection runs={runs} scoreOf={() => itemScore(student, item, target)} />
      <Actions item={item} />
      <section class={styles.section}>
        <h2 class={styles.heading}>The same arpeggio in other ways</h2>
        <WayList
          label="The same arpeggio in other ways"
          chances={chances}
          current={item.way}
          hrefFor={(way) => hrefOf('item', itemAt(item.arpeggioIndex, way).id)}
        />
        <p class={styles.note}>Chance in per cent of at least even at what is asked, today.</p>
      </section>
      <section class={styles.section}>
        <h2 class={styles.heading}>Remarks</h2>
        <Remarks
          about={item.id}
          remarks={student.remarks.filter((remark) => remark.about === item.id)}
        />
      </section>
    </Page>
  );
}

function LastPlayed({ item }: { readonly item: Item }) {
  const store = useStore();
  const { lastRuns, programme } = store.student.value;
  const last = lastRuns.get(item.id);
  if (last === undefined) {
    return <>Not played yet: the reach is a guess from the other arpeggios.</>;
  }
  const days = daysBetween(last.day, store.today.value);
  const ago = days === 0 ? 'today' : days === 1 ? 'yesterday' : `${days} days ago`;
  return (
    <>
      Last {FLUENCIES[last.fluency]} at {markOf(last.tempo, programme!.grouping)}, {ago} (
      {dateText(last.day)}).
    </>
  );
}

function Actions({ item }: { readonly item: Item }) {
  const store = useStore();
  const isAside = store.student.value.aside.has(item.id);
  const setAside = async (aside: boolean) => {
    try {
      await store.record([{ kind: 'aside', item: item.id, aside }]);
      const text = aside
        ? 'Set aside: it does not come up on the list.'
        : 'Taken back: it may come up on the list again.';
      say(text, { label: 'Undo', do: () => void setAside(!aside) });
    } catch (error) {
      say(error instanceof Error ? error.message : 'This could not be saved.');
    }
  };
  return (
    <div class={styles.actions}>
      <Button onClick={() => void setAside(!isAside)}>
        {isAside ? 'Take it back on the list' : 'Set it aside'}
      </Button>
      <ButtonLink href={hrefOf('recording')} kind="quiet">
        Judge a recording
      </ButtonLink>
      {isAside && <p class={styles.note}>It is set aside and does not come up on the list.</p>}
    </div>
  );
}

/** The runs of an item, read again whenever the log has changed. */
function useRuns(item: Item): readonly RunEvent[] {
  const store = useStore();
  const { eventCount } = store.student.value;
  const [runs, setRuns] = useState<readonly RunEvent[]>([]);
  useEffect(() => {
    let isCurrent = true;
    store.runsOf(item.id).then(
      (read) => isCurrent && setRuns(read),
      () => say('The runs could not be read.'),
    );
    return () => {
      isCurrent = false;
    };
  }, [store, item, eventCount]);
  return runs;
}
