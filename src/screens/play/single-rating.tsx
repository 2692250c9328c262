/** The rating of a single run: five big buttons, and one tap saves. */
import { useState } from 'preact/hooks';
import { FLUENCIES, type Fluency } from '../../../shared/log/events';
import { itemOf } from '../../../shared/music/deck';
import { Button } from '../../parts/button/button';
import { Figures } from '../../parts/figures/figures';
import { chordText } from '../../parts/words';
import { HeardRun } from './heard-run';
import { useKeyActions } from './key-actions';
import { KeyLegend } from './key-legend';
import { useStandKeys } from './pedal';
import type { RatingFormProps } from './rating';
import { rated, ratingOf } from './record-runs';
import styles from './single-rating.module.css';

export function SingleRating(props: RatingFormProps) {
  const { session, isSaving, onSave } = props;
  const id = session.entry.items[0]!;
  const item = itemOf(id);
  const { note, chord } = item;
  const take = session.takes?.[id];
  /** The one that "go on" saves; "back" moves it, so that a pedal can say all five. */
  const [chosen, setChosen] = useState<Fluency>(ratingOf(session, id).fluency);
  const save = (fluency: Fluency) => onSave(rated(session, id, { fluency }));
  const markAnother = () =>
    setChosen(((chosen + FLUENCIES.length - 1) % FLUENCIES.length) as Fluency);
  useStandKeys({
    forward: () => {
      if (props.isSettled()) save(chosen);
    },
    back: markAnother,
    stop: props.onStop,
  });
  useKeyActions({
    rate: (fluency) => {
      if (props.isSettled()) save(fluency);
    },
    forward: () => {
      if (props.isSettled()) save(chosen);
    },
    back: markAnother,
  });
  return (
    <>
      <p class={styles.name}>
        {chordText(note, chord).name} <Figures chord={chord} />
      </p>
      <div class={styles.buttons}>
        {FLUENCIES.map((word, fluency) => (
          <Button
            key={word}
            size="stand"
            kind={fluency === chosen ? 'main' : 'plain'}
            disabled={isSaving}
            onClick={() => save(fluency as Fluency)}
          >
            {word}
          </Button>
        ))}
      </div>
      <KeyLegend actions={['rate', 'forward', 'back']} />
      {take && <HeardRun take={take} item={item} tempo={session.tempo} />}
      <p class={styles.hint}>
        One touch saves. On a pedal, “on” saves the one that is marked, and “back” marks another.
      </p>
    </>
  );
}
