/** Long unbroken work brings a rest: first offered in a line, later asked for in place of the next entry. */
import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { now } from '../../clock';
import { Button, ButtonLink } from '../../parts/button/button';
import { say } from '../../parts/notice/notice';
import { Page } from '../../parts/page/page';
import { hrefOf } from '../../route';
import { useStore } from '../../store-context';
import { restAdvice } from '../../day/rest';
import styles from './rest-gate.module.css';

export function RestGate({ children }: { readonly children: ComponentChildren }) {
  const store = useStore();
  const runs = store.todaysRuns.value;
  const advice = restAdvice(runs, now());
  /** The number of runs at which the person last went on without a rest: asked again after the next. */
  const [dismissedAt, setDismissedAt] = useState(-1);
  useEffect(() => {
    if (advice === 'offer') {
      say(
        'Nearly half an hour without a pause. Five minutes away from the keys would do good now.',
      );
    }
  }, [advice]);
  if (advice !== 'insist' || dismissedAt === runs.length) return <>{children}</>;
  return (
    <Page title="Now a rest">
      <p>
        You have worked for the better part of an hour without a pause. Stand up, let the arms hang,
        look into the distance: five minutes are enough, and tired hands learn little.
      </p>
      <p>
        <strong>Pain: stop.</strong> <a href={hrefOf('help')}>What to do about pain</a>
      </p>
      <p class={styles.answers}>
        <ButtonLink kind="main" size="stand" href={hrefOf('today')}>
          Rest
        </ButtonLink>
        <Button kind="quiet" onClick={() => setDismissedAt(runs.length)}>
          Go on all the same
        </Button>
      </p>
    </Page>
  );
}
