/** One chord as a jury names it: no notes, no fingers; the tempo, a beat if it is allowed, and five marks. */
import { useEffect } from 'preact/hooks';
import { FLUENCIES, type Fluency } from '../../../shared/log/events';
import type { Programme } from '../../../shared/log/programme';
import { itemOf } from '../../../shared/music/deck';
import { Button } from '../../parts/button/button';
import { ignoreDoubleOf, useDoublePress } from '../../parts/double-press';
import { Figures } from '../../parts/figures/figures';
import { useTitleFocus } from '../../parts/page/page';
import { WhoseName } from '../../parts/page/whose';
import { Mark } from '../../parts/stepper/beat-note';
import { chordText, wayText } from '../../parts/words';
import { go } from '../../route';
import { keepScreenLit } from '../../sound/wake-lock';
import styles from './asked.module.css';
import { BeatButton } from './beat-button';
import type { Draft } from './draft';

interface AskedProps {
  readonly draft: Draft;
  readonly programme: Programme;
  readonly onChange: (draft: Draft) => void;
  readonly onGiveUp: () => void;
}

export function Asked({ draft, programme, onChange, onGiveUp }: AskedProps) {
  const { asked, marks, settings } = draft;
  const at = marks.length;
  const { item: id, tempo } = asked[at]!;
  const { note, chord, way } = itemOf(id);
  const text = chordText(note, chord);
  const heading = useTitleFocus('Examination');
  const isDouble = useDoublePress();
  useEffect(() => {
    const light = keepScreenLit();
    return () => light.release();
  }, []);
  // After a mark the next chord is read out, as a jury would.
  useEffect(() => {
    if (at > 0) heading.current?.focus({ preventScroll: true });
  }, [at, heading]);
  const mark = (event: Event, fluency: Fluency) => {
    if (isDouble(event)) return;
    if (at + 1 === asked.length) ignoreDoubleOf(event);
    onChange({ ...draft, marks: [...marks, fluency] });
  };
  return (
    <main class={styles.stand} data-stand>
      <header class={styles.bar}>
        <div>
          <WhoseName />
          <p class={styles.place}>
            Examination, {at + 1} of {asked.length}
          </p>
        </div>
        <Button size="stand" onClick={() => go('report')}>
          Pause
        </Button>
      </header>
      <div class={styles.question}>
        <h1 ref={heading} tabIndex={-1} class={styles.chord}>
          <span class={styles.sign}>
            {text.bottom}
            <Figures chord={chord} />
          </span>{' '}
          <span class={styles.name}>{text.name}</span>
        </h1>
        <p class={styles.way}>
          {wayText(way)}, <Mark tempo={tempo} grouping={programme.grouping} />
        </p>
        {settings.beat && <BeatButton key={at} tempo={tempo} grouping={programme.grouping} />}
      </div>
      <div class={styles.marks} role="group" aria-label="Mark">
        {FLUENCIES.map((word, fluency) => (
          <Button key={word} size="stand" onClick={(event) => mark(event, fluency as Fluency)}>
            {word}
          </Button>
        ))}
      </div>
      <div class={styles.others}>
        {at > 0 && (
          <Button kind="quiet" onClick={() => onChange({ ...draft, marks: marks.slice(0, -1) })}>
            Back to the one before
          </Button>
        )}
        <Button kind="quiet" onClick={onGiveUp}>
          Give it up
        </Button>
      </div>
    </main>
  );
}
