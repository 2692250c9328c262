/** The rating of a round: every row begins at "even", and only the exceptions are touched. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { FLUENCIES, type Fluency } from '../../../shared/log/events';
import { type ItemId, itemOf } from '../../../shared/music/deck';
import { markOf } from '../../../shared/music/tempo';
import { Button } from '../../parts/button/button';
import { Choice } from '../../parts/choice/choice';
import { Figures } from '../../parts/figures/figures';
import { TempoStepper } from '../../parts/stepper/tempo-stepper';
import { hasLevelKeys } from '../../parts/piano-keys';
import { chordText } from '../../parts/words';
import { preferences } from '../../preferences';
import { midi } from '../../sound/midi-input';
import { useStore } from '../../store-context';
import type { Session } from '../../day/session';
import { HeardInRound } from './heard-run';
import { useKeyActions } from './key-actions';
import { KeyLegend } from './key-legend';
import { useStandKeys } from './pedal';
import type { RatingFormProps } from './rating';
import styles from './rating-rows.module.css';
import { rated, ratingOf } from './record-runs';

const OPTIONS = FLUENCIES.map((label, value) => ({ value: value as Fluency, label }));

export function RatingRows(props: RatingFormProps) {
  const { session, setSession, isSaving, onSave } = props;
  useStandKeys({
    forward: () => {
      if (props.isSettled()) onSave(session);
    },
    stop: props.onStop,
  });
  const { items } = session.entry;
  /** The row that a key of the piano rates next; after the last one there is none. */
  const [row, setRow] = useState(0);
  const hasRowKeys = midi.state.value === 'connected' && hasLevelKeys(preferences.value.pianoKeys);
  useKeyActions({
    rate: (fluency) => {
      const item = items[row];
      if (item === undefined || !props.isSettled()) return;
      setSession(rated(session, item, { fluency }));
      setRow(row + 1);
    },
    forward: () => {
      if (props.isSettled()) onSave(session);
    },
    back: () => setRow(Math.max(0, row - 1)),
  });
  const exceptions = Object.keys(session.ratings).length;
  return (
    <>
      <KeyLegend actions={['rate', 'forward', 'back']} />
      <ol class={styles.rows}>
        {items.map((item, i) => (
          <Row
            key={item}
            item={item}
            session={session}
            setSession={setSession}
            isNext={hasRowKeys && i === row}
          />
        ))}
      </ol>
      <div class={styles.bar}>
        <Button size="stand" kind="main" disabled={isSaving} onClick={() => onSave(session)}>
          {exceptions === 0 ? 'All even: save' : 'Save'}
        </Button>
      </div>
    </>
  );
}

interface RowProps {
  readonly item: ItemId;
  readonly session: Session;
  readonly setSession: (session: Session) => void;
  /** A key of the piano rates this one now. */
  readonly isNext: boolean;
}

function Row({ item, session, setSession, isNext }: RowProps) {
  const { grouping } = useStore().student.value.programme!;
  const rating = ratingOf(session, item);
  const [isOpen, setOpen] = useState(rating.tempo !== null);
  const { note, chord } = itemOf(item);
  const text = chordText(note, chord);
  const take = session.takes?.[item];
  const played = rating.tempo ?? session.tempo;
  const row = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (isNext) row.current!.scrollIntoView({ block: 'center' });
  }, [isNext]);
  return (
    <li
      ref={row}
      class={styles.row}
      data-exception={item in session.ratings}
      aria-current={isNext ? 'step' : undefined}
    >
      <div class={styles.head}>
        <p class={styles.name}>
          {text.name} <Figures chord={chord} />
        </p>
        <Button
          kind="quiet"
          aria-expanded={isOpen}
          aria-label={`Tempo of ${text.name}: ${markOf(played, grouping)}`}
          onClick={() => setOpen(!isOpen)}
        >
          {markOf(played, grouping)}
        </Button>
      </div>
      <div class={styles.fluency}>
        <Choice
          legend={text.name}
          isLegendHidden
          options={OPTIONS}
          value={rating.fluency}
          onChange={(fluency) => setSession(rated(session, item, { fluency }))}
        />
      </div>
      {take && (
        <div class={styles.heard}>
          <HeardInRound take={take} item={itemOf(item)} tempo={played} />
        </div>
      )}
      {isOpen && (
        <div class={styles.tempo}>
          <TempoStepper
            label="Tempo of this one"
            tempo={played}
            grouping={grouping}
            onChange={(tempo) =>
              setSession(rated(session, item, { tempo: tempo === session.tempo ? null : tempo }))
            }
          />
        </div>
      )}
    </li>
  );
}
