/** The notes of an item in big type, on the drawn keyboard and on the staff; to be heard, too. */
import { type ReadonlySignal, useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { type Hands, handsOf, type Item, motionOf } from '../../../shared/music/deck';
import { HANDS } from '../../../shared/music/engraving/placed';
import { includesHand, soundsOf } from '../../../shared/music/playing';
import { keysOfHand, type Score } from '../../../shared/music/score';
import type { Tempo } from '../../../shared/music/tempo';
import { Figures } from '../../parts/figures/figures';
import { itemScore } from '../../parts/item-score';
import { Keyboard } from '../../parts/keyboard/keyboard';
import { Playback } from '../../parts/playback/playback';
import { Staff } from '../../parts/staff/staff';
import { chordText } from '../../parts/words';
import { preferences } from '../../preferences';
import { useStore } from '../../store-context';
import styles from './item-notes.module.css';

interface ItemNotesProps {
  readonly item: Item;
  readonly tempo: Tempo;
}

export function ItemNotes({ item, tempo }: ItemNotesProps) {
  const student = useStore().student.value;
  const preferred = preferences.value;
  const text = chordText(item.note, item.chord);
  const score = useMemo(
    () => itemScore(student, item, tempo, preferred),
    [student, item, tempo, preferred],
  );
  const place = useSignal<number | null>(null);
  const hands = useSignal<Hands>('together');
  return (
    <>
      <p class={styles.notes}>
        <span class="spoken">{text.spoken}</span>
        <span aria-hidden="true">{text.notes}</span>
        <span class={styles.figures} aria-hidden="true">
          <Figures chord={item.chord} />
        </span>
      </p>
      <Keys score={score} place={place} hands={hands} label={`The keys: ${text.spoken}`} />
      <div class={styles.playback}>
        <Playback score={score} place={place} hands={hands} />
      </div>
      <div class={styles.staff} data-hands={handsOf(item.way)} data-motion={motionOf(item.way)}>
        <Notes
          score={score}
          place={place}
          hands={hands}
          description={`${text.spoken}, up and down`}
        />
      </div>
    </>
  );
}

interface HeardProps {
  readonly score: Score;
  readonly place: ReadonlySignal<number | null>;
  /** Which hands are heard. */
  readonly hands: ReadonlySignal<Hands>;
}

/** On its own, as it is drawn anew with every note that is heard. */
function Keys({ score, place, hands, label }: HeardProps & { readonly label: string }) {
  const { right, left, sounds } = useMemo(
    () => ({
      right: keysOfHand(score.right),
      left: keysOfHand(score.left),
      sounds: HANDS.flatMap((hand) => soundsOf(score, hand)),
    }),
    [score],
  );
  const all = [...right, ...left];
  const at = place.value;
  const now = sounds.filter(
    ({ hand, start, end }) =>
      at !== null && start <= at && at < end && includesHand(hands.value, hand),
  );
  return (
    <Keyboard
      lowest={Math.min(...all)}
      highest={Math.max(...all)}
      right={includesHand(hands.value, 'right') ? right : []}
      left={includesHand(hands.value, 'left') ? left : []}
      now={now.map(({ midi }) => midi)}
      label={label}
    />
  );
}

function Notes({
  score,
  place,
  hands,
  description,
}: HeardProps & { readonly description: string }) {
  return <Staff score={score} at={place.value} hands={hands.value} description={description} />;
}
