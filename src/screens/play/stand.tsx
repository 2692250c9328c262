/** One entry on the music stand: first what is to come, with the tempo, then the run itself. */
import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { targetOfMost } from '../../../shared/log/programme';
import { fingeringFor } from '../../../shared/planning/chosen-fingering';
import { isReadyForPedal } from '../../../shared/planning/pedal';
import type { Reason } from '../../../shared/planning/reasons';
import { say, unsay } from '../../parts/notice/notice';
import { preferences } from '../../preferences';
import { startMetronome } from '../../sound/metronome';
import { keepScreenLit, type WakeLock } from '../../sound/wake-lock';
import { useStore } from '../../store-context';
import type { Session } from '../../day/session';
import { courseOf, type CourseOptions } from './course';
import { mayFollow } from './hears-by';
import { useKeyActions } from './key-actions';
import { useEar } from './listen';
import { useStandKeys } from './pedal';
import { ReadyPanel } from './ready-panel';
import { readyText } from './ready-text';
import { type Run, startRun } from './run';
import { RunPanel } from './run-panel';
import { Score } from './score';
import { StandBar } from './stand-bar';
import styles from './stand.module.css';

interface StandProps {
  readonly session: Session;
  /** Why the entry is on the list; null once the list has moved on without it. */
  readonly reason: Reason | null;
  readonly setSession: (session: Session | null) => void;
  readonly onStop: () => void;
  readonly onLeaveOut: () => void;
  /** An entry that is only gone through in the mind is over. */
  readonly onThought: () => void;
}

export function Stand(props: StandProps) {
  const { session, setSession, onThought } = props;
  const store = useStore();
  const student = store.student.value;
  const programme = student.programme!;
  const { fingerings, span } = student;
  const { grouping, contraryForm } = programme;
  const { blackNames, keySignature, beat, turner, volume, latencyOffsetMs } = preferences.value;
  const { entry, tempo, pedal } = session;
  const options = useMemo(
    (): CourseOptions => ({
      contraryForm,
      blackNames,
      hasKeySignatures: keySignature === 'own',
      pedal,
      // What is asked: the tempo of the day would have all drawn anew at each change, and looks the same.
      tempo: targetOfMost(programme, entry.way),
      grouping,
      fingeringOf: (item, hand) =>
        fingeringFor({ fingerings, span, programme }, item, hand)?.plan ?? null,
    }),
    [
      entry.way,
      contraryForm,
      blackNames,
      keySignature,
      pedal,
      grouping,
      fingerings,
      span,
      programme,
    ],
  );
  const course = useMemo(() => courseOf(entry.items, options), [entry.items, options]);
  const run = useSignal<Run | null>(null);
  const light = useSignal<WakeLock | null>(null);
  const playing = run.value;
  const at = playing?.part.value ?? session.at;
  const ear = useEar(course, options, playing !== null && playing.count.value === null);

  const latest = useRef(session);
  latest.current = session;

  useEffect(() => {
    const kept = keepScreenLit();
    light.value = kept;
    return () => {
      kept.release();
      run.peek()?.stop();
    };
  }, [run, light]);

  const begin = (from: number) => {
    unsay();
    const by = entry.isMental ? null : ear.begin(from, tempo);
    const isFollowed = mayFollow(by, beat) && turner === 'player';
    run.value = startRun(
      {
        course,
        tempo,
        grouping,
        beating: beat,
        isCountInOnly: by === 'microphone',
        follows: isFollowed ? ear.live.step : null,
        onTurn: ear.live.turnTo,
        volume,
        latencyOffsetMs,
        startMetronome,
        // Where the run stands is kept arpeggio by arpeggio.
        onPart: (part) => setSession({ ...latest.current, at: part }),
        onOver: () =>
          ear.whenQuiet(() => (entry.isMental ? onThought() : rate(entry.items.length))),
        onSilent: () => say('This device gives no sound now: the beat is only shown.'),
      },
      from,
    );
  };
  /** Goes on to the rating of the first arpeggios of the entry. */
  const rate = (count: number) => {
    const items = entry.items.slice(0, count);
    const played = { ...entry, items };
    const rating: Session = { ...latest.current, entry: played, at: count - 1, phase: 'rating' };
    ear.end(rating, count, setSession);
  };
  const stop = () => {
    // What went before the arpeggio that was broken off can still be rated.
    if (playing !== null && at > 0) ear.end(latest.current, at, setSession);
    run.value?.stop();
    // A probe that was broken off can be begun again, or passed over.
    if (playing !== null && entry.probe !== undefined) run.value = null;
    else props.onStop();
  };
  useStandKeys({
    forward: () => (playing === null ? begin(session.at) : playing.next()),
    back: () => playing?.back(),
    stop,
  });
  useKeyActions(playing === null ? { forward: () => begin(session.at) } : null);

  return (
    <main class={styles.stand} data-stand data-playing={playing !== null}>
      <StandBar entry={entry} at={at} isPlaying={playing !== null} onStop={stop} />
      <Score course={course} at={at} run={playing} lit={ear.live.lit} />
      {playing === null ? (
        <ReadyPanel
          session={session}
          grouping={grouping}
          text={readyText(student, session, { reason: props.reason, day: store.today.value })}
          mayPedal={isReadyForPedal(student, programme, entry.items)}
          mayGoDark={light.value?.state.value === 'off'}
          onTempo={(wish) => setSession({ ...session, tempo: wish })}
          onPedal={(wish) => setSession({ ...session, pedal: wish })}
          onBegin={begin}
          onRate={() => rate(session.at)}
          onLeaveOut={props.onLeaveOut}
        />
      ) : (
        <RunPanel
          run={playing}
          course={course}
          tempo={tempo}
          grouping={grouping}
          end={entry.isMental ? 'Done' : 'To the rating'}
        />
      )}
    </main>
  );
}
