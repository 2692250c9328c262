/** The music stand: leads from entry to entry through playing and rating to the end of the list. */
import { useEffect } from 'preact/hooks';
import { ButtonLink } from '../../parts/button/button';
import { say } from '../../parts/notice/notice';
import { Page } from '../../parts/page/page';
import { go, hrefOf, replace } from '../../route';
import { useStore } from '../../store-context';
import { isBusy } from '../../update/update';
import { dayListOf } from '../../day/day-list';
import { placementOf } from '../../day/placement';
import type { Session } from '../../day/session';
import { ListEnd } from './list-end';
import { RatingScreen } from './rating';
import { RestGate } from './rest-gate';
import { useSessionLock } from './session-lock';
import { Stand } from './stand';

export function PlayScreen() {
  const store = useStore();
  const list = dayListOf(store);
  const lock = useSessionLock();
  const isNew = store.status.value === 'ready' && store.student.value.programme === null;
  useEffect(() => {
    if (isNew) replace('start');
  }, [isNew]);
  if (lock === 'elsewhere') return <Elsewhere />;
  if (lock === 'asking' || list.plan.value === null) return null;
  return <Desk />;
}

function Desk() {
  const store = useStore();
  const list = dayListOf(store);
  const placement = placementOf(store);
  const session = list.current.value;
  const next = list.next.value;
  const isOpen = session !== null;
  useEffect(() => list.standUp(), [list]);
  useEffect(() => {
    isBusy.value = isOpen;
    return () => {
      isBusy.value = false;
    };
  }, [isOpen]);
  if (session === null) return <ListEnd />;

  const keep = (changed: Session | null): void => {
    list.setSession(changed).catch(() => {
      say('This device has no room to remember where you are: reloading the page would lose it.');
    });
  };
  const isProbe = session.entry.probe !== undefined;
  // Which probe follows is known once it has been read which were passed over.
  if (isProbe && placement.before.value === undefined) return null;
  /** After a probe comes the next at once, and after the last what they have shown. */
  const setSession = (changed: Session | null): void => {
    const following =
      isProbe && changed === null ? placement.next(store.student.peek().programme!) : changed;
    keep(following);
    if (isProbe && following === null) go('placement');
  };
  if (session.phase === 'rating') {
    return <RatingScreen key={session.entry.key} session={session} setSession={setSession} />;
  }
  return (
    <RestGate>
      <Stand
        key={session.entry.key}
        session={session}
        reason={next?.entry.key === session.entry.key ? next.entry.reason : null}
        setSession={setSession}
        onStop={() => {
          if (isProbe) keep(null);
          go(isProbe ? 'placement' : 'today');
        }}
        onLeaveOut={() => {
          if (isProbe) placement.passOver(session.entry.items[0]!);
          else list.leaveOut(session.entry.key);
          setSession(null);
        }}
        onThought={() => {
          setSession(null);
          list.noteThought(session.entry.key);
        }}
      />
    </RestGate>
  );
}

function Elsewhere() {
  return (
    <Page title="Playing in another window">
      <p>
        A session is open in another window or tab of this device. Close it there, and this one goes
        on by itself.
      </p>
      <p>
        <ButtonLink href={hrefOf('today')}>Back to the list</ButtonLink>
      </p>
    </Page>
  );
}
