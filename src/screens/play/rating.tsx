/** After a run: how it went. One tap, or one press of the pedal, when it went as expected. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { Button } from '../../parts/button/button';
import { useMedia } from '../../parts/media';
import { unsay } from '../../parts/notice/notice';
import { Page } from '../../parts/page/page';
import { TempoStepper } from '../../parts/stepper/tempo-stepper';
import { noteText, wayText } from '../../parts/words';
import { go } from '../../route';
import { useStore } from '../../store-context';
import type { Session } from '../../day/session';
import { PedalChoice } from './pedal-choice';
import styles from './rating.module.css';
import { RatingRows } from './rating-rows';
import { recordSession, toPlayAgain } from './record-runs';
import { SingleRating } from './single-rating';

interface RatingProps {
  readonly session: Session;
  readonly setSession: (session: Session | null) => void;
}

/** Milliseconds in which the pedal is not heard: a press for the last chord must not confirm what nobody has seen. */
const SETTLE = 900;

export function RatingScreen({ session, setSession }: RatingProps) {
  const store = useStore();
  const [failure, setFailure] = useState<string | null>(null);
  const [isSaving, setSaving] = useState(false);
  const isSettled = useSettled();
  // A telephone is nearer, and has no room to give away.
  const isWide = useMedia('(min-width: 44rem)');
  const { entry, tempo, pedal } = session;

  const save = async (rating: Session) => {
    if (isSaving) return;
    setSaving(true);
    unsay();
    try {
      await recordSession(store, rating, setSession);
    } catch (error) {
      setFailure(error instanceof Error ? error.message : 'Saving did not work.');
      setSaving(false);
    }
  };
  const shared = {
    session,
    setSession,
    isSaving,
    onSave: save,
    onStop: () => go(entry.probe === undefined ? 'today' : 'placement'),
    isSettled: () => isSettled.current,
  };

  return (
    <Page
      title="How did it go?"
      note={`${noteText(entry.note)}, ${wayText(entry.way)}`}
      lit={[entry.note]}
      isWide
    >
      <div class={styles.whole}>
        <TempoStepper
          label={entry.items.length === 1 ? 'Tempo played' : 'Tempo of all'}
          tempo={tempo}
          grouping={store.student.value.programme!.grouping}
          size={isWide ? 'stand' : 'normal'}
          onChange={(played) => setSession({ ...session, tempo: played })}
        />
        <PedalChoice
          pedal={pedal}
          onChange={(isUsed) => setSession({ ...session, pedal: isUsed })}
        />
      </div>
      {failure !== null && (
        <div role="alert" class={styles.failure}>
          <p>{failure}</p>
          <p>Nothing is lost: the ratings stay here until they are saved.</p>
        </div>
      )}
      {entry.items.length === 1 ? <SingleRating {...shared} /> : <RatingRows {...shared} />}
      <p class={styles.discard}>
        <Button kind="quiet" onClick={() => setSession(toPlayAgain(session))}>
          Play it again before rating
        </Button>
      </p>
    </Page>
  );
}

export interface RatingFormProps extends RatingProps {
  readonly isSaving: boolean;
  readonly onSave: (session: Session) => void;
  readonly onStop: () => void;
  readonly isSettled: () => boolean;
}

function useSettled() {
  const isSettled = useRef(false);
  useEffect(() => {
    const timer = setTimeout(() => {
      isSettled.current = true;
    }, SETTLE);
    return () => clearTimeout(timer);
  }, []);
  return isSettled;
}
