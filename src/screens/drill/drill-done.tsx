/** Notes a drill as played, and goes on with the list where it came from there. */
import { isPlayed } from '../../../shared/planning/drills/offer';
import type { DrillAddress } from '../../../shared/planning/drills/kinds';
import { dayListOf } from '../../day/day-list';
import { Button, ButtonLink } from '../../parts/button/button';
import { say } from '../../parts/notice/notice';
import { go, hrefOf } from '../../route';
import { useStore } from '../../store-context';
import styles from './drill-screen.module.css';

export function DrillDone({ address: { id } }: { readonly address: DrillAddress }) {
  const store = useStore();
  const list = dayListOf(store);
  const drills = list.drills.value;
  const isListed = drills.some(({ offer, state }) => offer.drill === id && state === 'open');
  const goOn = () => {
    const next = drills.find(({ offer, state }) => offer.drill !== id && state === 'open');
    if (next === undefined) go('play');
    else go('drill', next.offer.drill);
  };
  const note = async () => {
    try {
      const [event] = await store.record([{ kind: 'drill', drill: id }]);
      const undo = () => void store.record([{ kind: 'void', events: [event!.id] }]).catch(failed);
      say('Noted as practised.', { label: 'Undo', do: undo });
      if (isListed) goOn();
    } catch (error) {
      failed(error);
    }
  };
  if (isListed) {
    return (
      <div class={styles.done}>
        <Button kind="main" size="stand" onClick={() => void note()}>
          Done: go on
        </Button>
        <Button
          kind="quiet"
          onClick={() => {
            list.leaveOut(id);
            goOn();
          }}
        >
          Leave it out today
        </Button>
      </div>
    );
  }
  return (
    <div class={styles.done}>
      {isPlayed(store.student.value, id, store.today.value) ? (
        <p role="status">Practised today.</p>
      ) : (
        <Button onClick={() => void note()}>Note it as practised</Button>
      )}
      <ButtonLink href={hrefOf('today')}>To today’s list</ButtonLink>
    </div>
  );
}

const failed = (error: unknown): void =>
  say(error instanceof Error ? error.message : 'This could not be saved.');
