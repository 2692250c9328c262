/** All that was asked with its marks, before it goes into the log. */
import { FLUENCIES, type Fluency } from '../../../shared/log/events';
import type { Programme } from '../../../shared/log/programme';
import { itemOf } from '../../../shared/music/deck';
import { markOf } from '../../../shared/music/tempo';
import { outcomeOf } from '../../../shared/planning/examination/outcome';
import { Button } from '../../parts/button/button';
import { Choice } from '../../parts/choice/choice';
import { Page } from '../../parts/page/page';
import { percent } from '../../parts/percent-text';
import { chordText, wayText } from '../../parts/words';
import { bodyOf, type Draft } from './draft';
import styles from './examination.module.css';

interface ResultProps {
  readonly draft: Draft;
  readonly programme: Programme;
  readonly onChange: (draft: Draft) => void;
  readonly onSave: () => void;
  readonly onGiveUp: () => void;
}

const OPTIONS = FLUENCIES.map((label, value) => ({ value: value as Fluency, label }));

export function Result({ draft, programme, onChange, onSave, onGiveUp }: ResultProps) {
  const { even, asked, isPassed } = outcomeOf(bodyOf(draft));
  return (
    <Page
      title={isPassed ? 'Passed' : 'Not passed yet'}
      note={`${even} of ${asked} at least even, ${draft.settings.toPass} needed. The forecast was ${percent(draft.forecast)} per cent.`}
    >
      <ol class={styles.rows}>
        {draft.asked.map(({ item, tempo }, i) => {
          const { note, chord, way } = itemOf(item);
          const title = chordText(note, chord).title;
          return (
            <li key={item} class={styles.row}>
              <p>
                <span class="music">{title}</span>{' '}
                <span class={styles.soft}>
                  {wayText(way)}, {markOf(tempo, programme.grouping)}
                </span>
              </p>
              <Choice<Fluency>
                legend={`Mark of ${title}, ${wayText(way)}`}
                isLegendHidden
                options={OPTIONS}
                value={draft.marks[i]!}
                onChange={(fluency) => onChange({ ...draft, marks: draft.marks.with(i, fluency) })}
              />
            </li>
          );
        })}
      </ol>
      <div class={styles.buttons}>
        <Button kind="main" size="stand" onClick={onSave}>
          Keep the examination
        </Button>
        <Button kind="quiet" onClick={onGiveUp}>
          Give it up
        </Button>
      </div>
    </Page>
  );
}
