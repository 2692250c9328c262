/** Finding out where a student is who plays some of it already: ten runs on the stand, and what they have shown. */
import type { Programme } from '../../../shared/log/programme';
import { Button, ButtonLink } from '../../parts/button/button';
import { NoProgramme } from '../../parts/no-programme';
import { say } from '../../parts/notice/notice';
import { Page } from '../../parts/page/page';
import { dayListOf } from '../../day/day-list';
import { placementOf } from '../../day/placement';
import { go, hrefOf } from '../../route';
import { useStore } from '../../store-context';
import { Found } from './found';
import styles from './placement-screen.module.css';

const TITLE = 'Find out where you are';

export function PlacementScreen() {
  const store = useStore();
  const list = dayListOf(store);
  const placement = placementOf(store);
  const { programme } = store.student.value;
  const before = placement.before.value;
  if (programme === null) return <NoProgramme title={TITLE} />;
  if (before === undefined || !list.isRead.value) return null;

  const play = () => {
    placement.begin(programme);
    const next = placement.next(programme);
    if (next === null) {
      say('Nothing is left to ask today.');
      return;
    }
    // Should there be no room to keep it, it holds until the page is left.
    list.setSession(next).catch(() => undefined);
    go('play');
  };
  if (list.sore.value !== null) return <NotNow text="A hand is to rest today: another day." />;
  const open = list.session.value;
  if (open !== null && open.entry.probe === undefined) {
    return (
      <NotNow text="A run of today’s list is open on the stand. Bring that to its end first." />
    );
  }
  const onOpen = open === null ? play : () => go('play');
  if (before === null || placement.probes.value.length === 0) {
    return <Before programme={programme} onBegin={onOpen} isOpen={open !== null} />;
  }
  return <Found programme={programme} before={before} onGoOn={onOpen} />;
}

function NotNow({ text }: { readonly text: string }) {
  return (
    <Page title={TITLE} note={text}>
      <ButtonLink href={hrefOf('today')} kind="main">
        To today’s list
      </ButtonLink>
    </Page>
  );
}

interface BeforeProps {
  readonly programme: Programme;
  readonly onBegin: () => void;
  /** The first run waits on the stand. */
  readonly isOpen: boolean;
}

function Before({ programme, onBegin, isOpen }: BeforeProps) {
  const hasBegun = useStore().todaysRuns.value.some(({ entry }) => entry !== null);
  return (
    <Page title={TITLE} lit={programme.notes} note="Ten single runs, about six minutes">
      <div class={styles.text}>
        <p>
          For a student who plays some of it already. Each run is one arpeggio, at a tempo that may
          come out or may not, as that tells most. Rate it as it went, and the next run follows from
          it. Who is only beginning needs none of this: the list begins slowly, with one hand.
        </p>
        <p>
          Warm up first, a minute or two of something easy. Each hand plays alone before both play
          together. Skip what you like, and stop when you like: what was rated counts.
        </p>
        {hasBegun && <p>Today’s list has begun and stays as it is; tomorrow’s follows the runs.</p>}
        <p>
          Slow and even comes first. Pain: stop.{' '}
          <a href={hrefOf('help')}>About care for the hands</a>
        </p>
      </div>
      <div class={styles.actions}>
        <Button kind="main" size="stand" onClick={onBegin}>
          {isOpen ? 'Go on where you stopped' : 'Begin'}
        </Button>
        <ButtonLink size="stand" href={hrefOf('today')}>
          Not now: to today’s list
        </ButtonLink>
      </div>
    </Page>
  );
}
